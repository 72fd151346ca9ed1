import { accessSync, closeSync, constants, fsyncSync, openSync, renameSync, rmSync } from 'node:fs'
import { basename, dirname } from 'node:path'

/** So long a file is waited for that another program holds, as a virus scanner does with a new one. Milliseconds. */
const PATIENCE_MS = 3_000
const PAUSE_MS = 40
/** What systems say of a file that another program holds; Windows says the last two of protected files as well. */
const HELD = new Set(['EBUSY', 'EPERM', 'EACCES'])

/**
 * Makes a file under another name and gives it its own once it is whole: a half-made one never carries the real name.
 *
 * Whatever is thrown, nothing is left under the other name.
 */
export async function makeWhole<T>(
  file: string,
  make: (unfinished: string) => T | Promise<T>,
  patienceMs: number = PATIENCE_MS,
): Promise<T> {
  const unfinished = `${file}.unfinished`
  removeFile(unfinished, patienceMs)
  try {
    const made = await make(unfinished)
    moveFile(unfinished, file, patienceMs)
    return made
  } finally {
    for (const left of [unfinished, `${unfinished}-journal`]) removeIfFree(left)
  }
}

/**
 * Gives a finished file its name, after it was synced to the disk, and syncs the folder where the system can.
 *
 * Tries again for `patienceMs` while another program holds the file, then throws an error of code EBUSY; throws the
 * system's own error where the folder may not be written.
 */
export function moveFile(from: string, to: string, patienceMs: number = PATIENCE_MS): void {
  syncToDisk(from, 'r+')
  patiently(to, patienceMs, () => renameSync(from, to))
  syncToDisk(dirname(to), 'r')
}

/** Removes a file or folder, if it is there, with the same patience as `moveFile`. */
export function removeFile(path: string, patienceMs: number = PATIENCE_MS): void {
  patiently(path, patienceMs, () => rmSync(path, { recursive: true, force: true }))
}

/** Removes what is no longer needed, unless something holds it: then it stays until the next time. */
export function removeIfFree(path: string): void {
  try {
    removeFile(path, 0)
  } catch {
    // An old copy that stays does no harm, and a new one that was made well must not count as failed for it.
  }
}

function patiently(path: string, patienceMs: number, act: () => void): void {
  const end = performance.now() + patienceMs
  for (;;) {
    try {
      act()
      return
    } catch (thrown) {
      if (!HELD.has(codeOf(thrown))) throw thrown
      if (performance.now() >= end) throw mayWrite(dirname(path)) ? heldByAnother(path, thrown) : thrown
      // No thread that anybody waits for comes here: they are opening, backing up or changing collections.
      Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0, PAUSE_MS)
    }
  }
}

function syncToDisk(path: string, flags: 'r' | 'r+'): void {
  let descriptor: number
  try {
    descriptor = openSync(path, flags)
  } catch {
    // Windows opens no folder; a file that may not be opened is the next step's to tell.
    return
  }
  try {
    fsyncSync(descriptor)
  } catch (thrown) {
    // Some network and memory file systems cannot sync a folder.
    if (flags === 'r+') throw thrown
  } finally {
    closeSync(descriptor)
  }
}

function mayWrite(folder: string): boolean {
  try {
    accessSync(folder, constants.W_OK)
    return true
  } catch {
    return false
  }
}

function heldByAnother(path: string, cause: unknown): Error {
  const message = `Another program holds ${basename(path)}`
  return Object.assign(new Error(message, { cause }), { code: 'EBUSY' })
}

function codeOf(thrown: unknown): string {
  return thrown instanceof Error && 'code' in thrown ? String(thrown.code) : ''
}
