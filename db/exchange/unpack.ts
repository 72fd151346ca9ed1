import { strFromU8, unzipSync } from 'fflate'
import { type Message, message } from '../messages/message.ts'

/** What an archive holds, by name; or why it cannot be opened. */
export type Unpacked =
  | { readonly kind: 'unpacked'; readonly files: ReadonlyMap<string, Uint8Array> }
  | { readonly kind: 'refused'; readonly because: Message }

/** So much may an archive unpack to, bytes: a sheet of 100,000 rows needs less. */
const MOST_UNPACKED = 160_000_000
const MOST_FILES = 2_000

/**
 * Unpacks what is wanted of a ZIP archive.
 *
 * No more memory is taken than the archive says it needs, and an archive that says too much, or names a file twice or
 * outside itself, is refused.
 */
export function unpack(bytes: Uint8Array, wanted: (name: string) => boolean): Unpacked {
  let total = 0
  const names = new Set<string>()
  let because: Message | null = null
  const keep = (name: string, size: number): boolean => {
    if (because !== null) return false
    if (names.has(name) || names.size >= MOST_FILES) because = message('import-file.packed-oddly')
    else if (/(^|[/\\])\.\.([/\\]|$)|^[/\\]|^[A-Za-z]:/.test(name))
      because = message('import-file.leads-outside')
    else if (wanted(name)) total += size
    names.add(name)
    if (total > MOST_UNPACKED) because = message('import-file.far-too-much')
    return because === null && wanted(name)
  }
  try {
    const files = unzipSync(bytes, { filter: ({ name, originalSize }) => keep(name, originalSize) })
    return because === null
      ? { kind: 'unpacked', files: new Map(Object.entries(files)) }
      : { kind: 'refused', because }
  } catch {
    return { kind: 'refused', because: message('import-file.cut-off') }
  }
}

/** A packed text file; empty where it is not there. */
export function textOf(files: ReadonlyMap<string, Uint8Array>, name: string): string {
  const bytes = files.get(name)
  return bytes === undefined ? '' : strFromU8(bytes)
}
