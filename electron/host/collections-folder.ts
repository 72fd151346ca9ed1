import { chmodSync, existsSync, mkdirSync, readdirSync, readFileSync, statSync, writeFileSync } from 'node:fs'
import { homedir } from 'node:os'
import { basename, dirname, isAbsolute, join, relative, resolve } from 'node:path'
import { withinBytes } from '../../db/migrations/file-place.ts'
import { makeWhole, removeIfFree } from '../../db/migrations/held-files.ts'

const REMEMBERED = 'last-open.json'
/** So long another program may hold a small file: what is in it can be written later. Milliseconds. */
const PATIENCE_MS = 200
/** A file name holds 255 bytes on most systems; backups and half-made files add their own words to it. */
const LONGEST_NAME_BYTES = 120
const USUAL_FOLDER = join(homedir(), 'Common Drawer')
const DEMO = 'Demo collection.drawer'

/** The folder where collections live: the one asked for, else the environment's, else one in the home folder. */
export function collectionsFolder(asked: string | undefined, environment: NodeJS.ProcessEnv): string {
  return resolve(asked ?? environment['COMMON_DRAWER_FOLDER'] ?? USUAL_FOLDER)
}

/** Has whatever this process makes from now on belong to its account alone: files 0600, folders 0700. */
export function keepFilesPrivate(): void {
  process.umask(0o077)
}

/**
 * Makes the folder of the collections, for its owner alone.
 *
 * The usual folder is closed to other accounts even where an earlier version left it open; another one stays as its
 * owner set it. Windows keeps a home folder closed by itself.
 */
export function prepareFolder(folder: string): void {
  keepFilesPrivate()
  mkdirSync(folder, { recursive: true })
  if (folder === USUAL_FOLDER) chmodSync(folder, 0o700)
}

/** Where the demonstration lies. */
export function demoFile(folder: string): string {
  return join(folder, DEMO)
}

/** A file name for a library, with `tail` after it, that no file of the folder bears yet. */
export function freeFile(folder: string, libraryName: string, tail = ''): string {
  const name = `${fileName(libraryName)}${tail}`
  for (let count = 1; ; count += 1) {
    const file = join(folder, `${name}${count === 1 ? '' : ` ${count}`}.drawer`)
    if (!existsSync(file)) return file
  }
}

/** A file name for what is restored of a collection, beside it, that no file bears yet. */
export function restoredFile(file: string, now: Date): string {
  const name = basename(file, '.drawer').replace(/ restored \d{4}-\d\d-\d\d( \d+)?$/, '')
  return freeFile(dirname(file), name, ` restored ${now.toISOString().slice(0, 10)}`)
}

/** Characters and names that one system or another refuses in a file name are left out. */
function fileName(libraryName: string): string {
  const allowed = libraryName
    .normalize('NFC')
    // biome-ignore lint/suspicious/noControlCharactersInRegex: control characters are what is taken out
    .replace(/[\u0000-\u001f<>:"/\\|?*]/g, ' ')
    .replace(/\s+/g, ' ')
    .replace(/^[. ]+/, '')
  const kept = withinBytes(allowed, LONGEST_NAME_BYTES).replace(/[. ]+$/, '')
  const reserved = /^(con|prn|aux|nul|com\d|lpt\d)(\.|$)/i.test(kept)
  return kept === '' || reserved ? 'My collection' : kept
}

/**
 * The collection that was open last. Where none is remembered, the one of the folder that was written last, so that a
 * keeper who moved the folder, or lost what was remembered, is not shown the demonstration; null where there is none.
 */
export function lastOpen(folder: string): string | null {
  try {
    const remembered: unknown = JSON.parse(readFileSync(join(folder, REMEMBERED), 'utf8'))
    const hasFile = typeof remembered === 'object' && remembered !== null && 'file' in remembered
    if (hasFile && typeof remembered.file === 'string') return resolve(folder, remembered.file)
  } catch {
    // Not there yet, or spoilt: then nothing is remembered.
  }
  return lastWritten(folder)
}

function lastWritten(folder: string): string | null {
  if (!existsSync(folder)) return null
  const own = readdirSync(folder, { withFileTypes: true })
    // A Mac puts a small hidden file beside each one on a stick or a share, under the same name after '._'.
    .filter((found) => !found.isDirectory() && /^(?!\.).*\.drawer$/.test(found.name) && found.name !== DEMO)
    .map(({ name }) => ({ file: join(folder, name), at: statSync(join(folder, name)).mtimeMs }))
  return own.toSorted((a, b) => b.at - a.at)[0]?.file ?? null
}

/** Remembers which collection is open, for the next start: within the folder by its name alone, so that the folder may move. */
export async function rememberOpen(folder: string, file: string): Promise<void> {
  mkdirSync(folder, { recursive: true })
  const within = relative(folder, file)
  const named = within.startsWith('..') || isAbsolute(within) ? file : within
  await writeSmallFile(join(folder, REMEMBERED), `${JSON.stringify({ file: named })}\n`)
}

/** Writes a small file of this app's own, readable by its owner alone; whoever reads it finds the old or the new text. */
export async function writeSmallFile(file: string, text: string): Promise<void> {
  await makeWhole(file, (unfinished) => writeFileSync(unfinished, text, { mode: 0o600 }), PATIENCE_MS)
}

/** Removes a small file of this app's own, unless another program holds it. */
export const removeSmallFile: (file: string) => void = removeIfFree
