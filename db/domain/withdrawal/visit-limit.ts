/** Purposes that the limit for one visit is meant for: what a person takes home. */
const LIMITED: ReadonlySet<string> = new Set(['to-grow', 'to-return', 'other'])

/**
 * Whether a visit takes more packets than the keeper's limit for one, which then wants a reason.
 *
 * No limit (null) limits nothing, nor does one apply to seed that goes out for a test, a display or another library.
 * Common practice, no source.
 */
export function isOverVisitLimit(packets: number, visitLimit: number | null, purpose: string): boolean {
  return visitLimit !== null && packets > visitLimit && LIMITED.has(purpose)
}
