import type { TestTime } from './runners.ts'

/** The most that one test may take on a quiet machine, milliseconds. */
export const UNIT_TEST_MS = 2_000
export const APP_TEST_MS = 15_000
const SHOWN = 10

/** The slowest tests, slowest first, a line each. */
export function slowest(times: readonly TestTime[]): string[] {
  return times
    .toSorted((one, other) => other.ms - one.ms)
    .slice(0, SHOWN)
    .map(({ name, ms }) => `${(ms / 1000).toFixed(1)} s  ${name}`)
}

/** The tests that took more than they may on a machine that is so many times slower than a quiet one, in sentences. */
export function overBudget(times: readonly TestTime[], limitMs: number, slowness: number): string[] {
  return times
    .filter(({ ms }) => ms > limitMs * slowness)
    .map(
      ({ name, ms }) =>
        `${name} took ${(ms / 1000).toFixed(1)} s, on a machine ${slowness.toFixed(1)} times slower than a quiet one. ` +
        `One test may take ${limitMs / 1000} s on a quiet machine: make it shorter, split it, or let the long run try most of it.`,
    )
}
