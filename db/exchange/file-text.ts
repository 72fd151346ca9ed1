/** How the characters of a text file are written down. */
export const ENCODINGS = ['utf-8', 'utf-16le', 'utf-16be', 'windows-1252', 'macintosh'] as const
export type Encoding = (typeof ENCODINGS)[number]

export interface FileText {
  readonly text: string
  readonly encoding: Encoding
  /** Whether the file says so, it was found by looking, or it can only be guessed. */
  readonly from: 'choice' | 'mark' | 'looking' | 'guess'
}

const MARKS: readonly (readonly [Encoding, readonly number[]])[] = [
  ['utf-8', [0xef, 0xbb, 0xbf]],
  ['utf-16le', [0xff, 0xfe]],
  ['utf-16be', [0xfe, 0xff]],
]
const LOOKED_AT = 2_000

/**
 * The text of a file, by its byte order mark, else as UTF-8 where every byte fits it, else as Windows-1252.
 *
 * The order is that of common practice: text that is valid UTF-8 by chance is rare (no source). Null: not a text at all.
 */
export function readText(bytes: Uint8Array, chosen?: Encoding): FileText | null {
  if (chosen !== undefined) return { text: decoded(bytes, chosen), encoding: chosen, from: 'choice' }
  const mark = MARKS.find(([, sign]) => sign.every((byte, index) => bytes[index] === byte))?.[0]
  if (mark !== undefined) return { text: decoded(bytes, mark), encoding: mark, from: 'mark' }
  const wide = wideOf(bytes)
  if (wide !== null) return { text: decoded(bytes, wide), encoding: wide, from: 'looking' }
  if (bytes.includes(0)) return null
  try {
    const text = new TextDecoder('utf-8', { fatal: true }).decode(bytes)
    return { text, encoding: 'utf-8', from: 'looking' }
  } catch {
    return { text: decoded(bytes, 'windows-1252'), encoding: 'windows-1252', from: 'guess' }
  }
}

function decoded(bytes: Uint8Array, encoding: Encoding): string {
  return new TextDecoder(encoding).decode(bytes)
}

/** UTF-16 without its mark: every other byte of common text is zero. */
function wideOf(bytes: Uint8Array): Encoding | null {
  const head = bytes.subarray(0, LOOKED_AT)
  const zeros = (offset: number) =>
    head.reduce((sum, byte, index) => sum + (index % 2 === offset && byte === 0 ? 1 : 0), 0)
  const most = head.length * 0.4
  if (zeros(1) > most && zeros(0) === 0) return 'utf-16le'
  return zeros(0) > most && zeros(1) === 0 ? 'utf-16be' : null
}
