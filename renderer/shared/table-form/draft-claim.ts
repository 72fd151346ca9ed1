/** The sign that a window is working on a draft: seen by every window of this browser, and gone with the window. */
const SIGN = 'draft-at-work/'

/** Claims a draft for this window until the answered function is called. */
export function claimDraft(draftId: string): () => void {
  let giveUp = () => {}
  const held = new Promise<void>((resolve) => {
    giveUp = resolve
  })
  void navigator.locks?.request(SIGN + draftId, () => held)
  return giveUp
}

const LEAVING_TAKES_MS = 100
const INSPECTIONS = 4

/**
 * The drafts that other windows of this browser are working on now.
 *
 * A page that is loaded again may still find its own claim for a moment: `ownId` counts as another's, such as that of a
 * duplicated tab, only when it stays claimed.
 */
export async function draftsOfOthers(ownId: string | null): Promise<ReadonlySet<string>> {
  let claimed = await claimedDrafts()
  for (let look = 1; look < INSPECTIONS && ownId !== null && claimed.has(ownId); look++) {
    await new Promise((resolve) => setTimeout(resolve, LEAVING_TAKES_MS))
    claimed = await claimedDrafts()
  }
  return claimed
}

async function claimedDrafts(): Promise<ReadonlySet<string>> {
  const { held = [] } = (await navigator.locks?.query()) ?? {}
  return new Set(held.flatMap(({ name }) => (name?.startsWith(SIGN) ? [name.slice(SIGN.length)] : [])))
}
