import { celsiusInWords } from './climate-words.ts'

/** What a place is taken to be like where nobody measured, before and after it is called another kind of place. */
export interface KindChange {
  readonly celsiusBefore: number
  readonly celsiusAfter: number
  /** The place whose readings hold there before and after, or null. */
  readonly readFromBefore: string | null
  readonly readFromAfter: string | null
  /** Lots with seed there. */
  readonly lots: number
  /** Whether it freezes after, and did not before. */
  readonly beginsToFreeze: boolean
}

/** What calling a place another kind of place does to the climate that its seed is taken to have lain in. */
export function kindChangeInWords(change: KindChange): string {
  const frost = change.beginsToFreeze
    ? ' Frost kills moist seed: look at what is said beside each of its lots.'
    : ''
  const { readFromBefore, readFromAfter } = change
  const [before, after] = [degrees(change.celsiusBefore), degrees(change.celsiusAfter)]
  const same =
    readFromBefore === readFromAfter &&
    (readFromAfter !== null || change.celsiusBefore === change.celsiusAfter)
  if (same) {
    const holds =
      readFromAfter === null
        ? `Its seed is taken to lie at ${after} as before`
        : `The readings of ${readFromAfter} go on to hold`
    return `${holds}: no forecast changes.${frost}`
  }
  const lots =
    change.lots === 0
      ? ''
      : ` ${change.lots === 1 ? 'The forecast of the lot there changes' : `The forecasts of the ${change.lots} lots there change`}.`
  const was =
    readFromBefore === null
      ? `Nobody measured there. Its seed was taken to have lain at ${before}`
      : `Its seed was taken to have lain in the air of ${readFromBefore}`
  const is =
    readFromAfter === null
      ? `is now taken to have lain at ${after} all the time.${lots} Readings would tell better.`
      : `is now taken to have lain in the air of ${readFromAfter}.${lots}`
  return `${was}, and ${is}${frost}`
}

function degrees(celsius: number): string {
  return celsiusInWords(100 * celsius).replace('.0', '')
}
