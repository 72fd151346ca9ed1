import { appendFileSync, mkdirSync, renameSync, statSync } from 'node:fs'
import { dirname, join } from 'node:path'

/** Takes one line: an operation, an outcome, a place in the code. Never what somebody typed. */
export type Log = (line: string) => void

const FULL_AT_BYTES = 1_000_000

/** A log file in a folder; at one megabyte it is set aside as the one before. Never throws: work goes on without it. */
export function logFile(folder: string, now: () => Date): Log {
  const file = join(folder, 'common-drawer.log')
  return (line) => {
    try {
      mkdirSync(dirname(file), { recursive: true })
      if ((statSync(file, { throwIfNoEntry: false })?.size ?? 0) > FULL_AT_BYTES)
        renameSync(file, `${file}.before`)
      appendFileSync(file, `${now().toISOString()} ${line}\n`)
    } catch (cause) {
      console.error(
        `The log could not be written (${cause instanceof Error ? cause.name : 'unknown'}): ${line}`,
      )
    }
  }
}
