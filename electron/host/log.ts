import { appendFileSync, mkdirSync, statSync } from 'node:fs'
import { dirname, join } from 'node:path'
import { moveFile } from '../../db/migrations/held-files.ts'

/** Takes one line: an operation, an outcome, a place in the code. Never what somebody typed. */
export type Log = (line: string) => void

const FULL_AT_BYTES = 1_000_000

/** A log file in a folder; at one megabyte it is set aside as the one before. Never throws: work goes on without it. */
export function logFile(folder: string, now: () => Date): Log {
  const file = join(folder, 'common-drawer.log')
  return (line) => {
    try {
      mkdirSync(dirname(file), { recursive: true })
      setAsideIfFull(file)
      appendFileSync(file, `${now().toISOString()} ${line}\n`)
    } catch (cause) {
      console.error(
        `The log could not be written (${cause instanceof Error ? cause.name : 'unknown'}): ${line}`,
      )
    }
  }
}

function setAsideIfFull(file: string): void {
  if ((statSync(file, { throwIfNoEntry: false })?.size ?? 0) <= FULL_AT_BYTES) return
  try {
    moveFile(file, `${file}.before`, 0)
  } catch {
    // Held by another program: it is set aside at a later line, and this one is not lost for it.
  }
}
