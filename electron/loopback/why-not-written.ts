/** Why a small file could not be written into the folder of the collections, in a sentence. */
export function whyNotWritten(thrown: unknown): string {
  const code = thrown instanceof Error && 'code' in thrown ? thrown.code : ''
  return code === 'ENOSPC' || code === 'EDQUOT'
    ? 'The disk of your collections is full: make room on it.'
    : 'The folder of your collections may not be written in.'
}
