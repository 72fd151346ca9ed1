/** What became of a gift since it came. */
export interface GiftSoFar {
  /** People who took seed of it, each once; those who were not named do not count. */
  readonly takers: number
  readonly packets: number
  /** Lots that came back of it. */
  readonly regrown: number
  /** Of its latest test; null: never tested. */
  readonly sprouted: number | null
  readonly tested: number | null
}

/** What became of a gift, for its donor, in one sentence; empty while nothing has. */
export function sofarInWords({ takers, packets, regrown, sprouted, tested }: GiftSoFar): string {
  const out = takers > 0 ? `${people(takers)} took seed of it` : `${times(packets)} seed of it went out`
  const parts = [
    packets === 0 ? '' : out,
    regrown === 0 ? '' : `it was grown again and seed came back ${times(regrown)}`,
    sprouted === null || tested === null ? '' : `of ${tested} seeds tested last, ${sprouted} sprouted`,
  ].filter((part) => part !== '')
  if (parts.length === 0) return ''
  const last = parts.at(-1)
  const list = parts.length === 1 ? last : `${parts.slice(0, -1).join(', ')}, and ${last}`
  return `So far, ${list}.`
}

function people(count: number): string {
  return count === 1 ? 'one person' : `${count} people`
}

function times(count: number): string {
  return count === 1 ? 'once' : `${count} times`
}
