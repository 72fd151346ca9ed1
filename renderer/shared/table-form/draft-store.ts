/** An unfinished visit as it was last kept. */
export interface KeptDraft {
  readonly draftId: string
  readonly text: string
  readonly keptAt: string
  /** Kept before the app was last started, so that no window is working on it now. */
  readonly earlierRun: boolean
}

export type DraftKind = 'take-in' | 'hand-out'

const PREFIX = 'draft'

/** The unfinished visits of a kind, newest first. */
export async function listDrafts(kind: DraftKind): Promise<readonly KeptDraft[]> {
  const drafts: KeptDraft[] = []
  for (let at = 0; at < localStorage.length; at++) {
    const name = localStorage.key(at) ?? ''
    const [prefix, ofKind, draftId] = name.split('/')
    const kept = localStorage.getItem(name)
    if (prefix !== PREFIX || ofKind !== kind || draftId === undefined || kept === null) continue
    const { text, keptAt } = JSON.parse(kept) as { text: string; keptAt: string }
    drafts.push({ draftId, text, keptAt, earlierRun: false })
  }
  return drafts.toSorted((a, b) => b.keptAt.localeCompare(a.keptAt))
}

/** Keeps an unfinished visit; an empty text lets it go. */
export async function keepDraft(kind: DraftKind, draftId: string, text: string): Promise<void> {
  const name = [PREFIX, kind, draftId].join('/')
  if (text === '') localStorage.removeItem(name)
  else localStorage.setItem(name, JSON.stringify({ text, keptAt: new Date().toISOString() }))
}
