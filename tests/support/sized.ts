/** Whether this is the long run (`npm run test:long`): many seeds, sizes, languages and kills. */
export const LONG_RUN = process.env['LONG_TESTS'] === 'yes'

/** How much of something is tried: a little in every run, a lot in the long one. */
export function sized<T>(everyRun: T, longRun: T): T {
  return LONG_RUN ? longRun : everyRun
}
