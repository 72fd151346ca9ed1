import { appendFileSync, existsSync, readFileSync } from 'node:fs'

/** Names the file in which a whole run of the tests gathers what they counted. */
export const COUNTS_FILE = 'COUNTS_FILE'

/** Tells what a test really did, such as 8 kills survived: in the sum at the end of `npm test`, or at once where it runs alone. */
export function counted(what: string, count: number): void {
  const file = process.env[COUNTS_FILE]
  if (file === undefined) console.log(`${what}: ${count}`)
  else appendFileSync(file, `${JSON.stringify({ what, count })}\n`)
}

/** The sum of each kind that the tests counted into a file, a line each, in the order of the alphabet. */
export function countsIn(file: string): string[] {
  const sums = new Map<string, number>()
  const lines = existsSync(file) ? readFileSync(file, 'utf8').trimEnd().split('\n') : []
  for (const line of lines) {
    const { what, count } = JSON.parse(line) as { what: string; count: number }
    sums.set(what, (sums.get(what) ?? 0) + count)
  }
  return [...sums].map(([what, count]) => `${what}: ${count.toLocaleString('en')}`).sort()
}
