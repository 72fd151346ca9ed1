import { celsiusInWords } from './climate-words.ts'

/** What a place is taken to be like where nobody measured, before and after it is called another kind of place. */
export interface KindChange {
  readonly celsiusBefore: number
  readonly celsiusAfter: number
  /** The place whose readings hold there, or null. */
  readonly readFrom: string | null
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
  if (change.readFrom !== null)
    return `The readings of ${change.readFrom} go on to hold: no forecast changes.${frost}`
  if (change.celsiusBefore === change.celsiusAfter)
    return `Its seed is taken to lie at ${degrees(change.celsiusAfter)} as before: no forecast changes.${frost}`
  const lots =
    change.lots === 0
      ? ''
      : ` ${change.lots === 1 ? 'The forecast of the lot there changes' : `The forecasts of the ${change.lots} lots there change`}.`
  return `Nobody measured there. Its seed was taken to have lain at ${degrees(change.celsiusBefore)}, and is now taken to have lain at ${degrees(change.celsiusAfter)} all the time.${lots} Readings would tell better.${frost}`
}

function degrees(celsius: number): string {
  return celsiusInWords(100 * celsius).replace('.0', '')
}
