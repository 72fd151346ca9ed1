import { type Message, message } from '../../messages/message.ts'
import { addDays, DAYS_IN_YEAR } from '../dates/day-arithmetic.ts'
import type { IsoDate } from '../dates/iso-date.ts'
import type { CountedUnitName } from './counted-unit.ts'

/**
 * What is planted as a clove, a bulb or a tuber is a piece of its mother plant: it does not come of a flower, so it does not
 * cross; it cannot be dried nor frozen like seed; and it keeps for a season only, so it is grown again every year.
 *
 * FAO Genebank Standards 2014, chapter 5 (field genebanks): what is kept by vegetative parts is grown on, season after season,
 * in place of a store (from memory).
 */
const PIECES = ['clove', 'bulb', 'tuber'] as const satisfies readonly CountedUnitName[]
export type PieceName = (typeof PIECES)[number]

/** Whether a crop is counted in pieces that are planted, and not in seed. */
export function isPiece(unit: CountedUnitName): unit is PieceName {
  return PIECES.some((piece) => piece === unit)
}

/** Months that pieces keep where nobody has said: from one harvest to the next planting. Common practice, no source. */
export const MONTHS_WITHOUT_FIGURE = 8

/** The last day on which pieces count as sound: so many months after they were harvested. */
export function keptUntil(harvested: IsoDate, months: number | null): IsoDate {
  return addDays(harvested, Math.round(((months ?? MONTHS_WITHOUT_FIGURE) * DAYS_IN_YEAR) / 12))
}

/** How long pieces keep and what is done with them, for the card of a lot. */
export function keptTold(unit: PieceName, until: IsoDate, today: IsoDate): Message {
  return message('pieces.kept', { unit, until: { day: until }, over: today > until ? 'yes' : 'no' })
}
