import { countInWords, type Manner, toFigures } from '../amounts/in-words.ts'
import type { CountedUnit } from '../crops/counted-unit.ts'
import { NEED_STATES, type NeedState } from './need.ts'

/** What decides how urgent an accession is. */
export interface UrgencyFacts {
  readonly accessionId: number
  readonly state: NeedState
  /** Living seeds here. */
  readonly living: number
  /** Seeds here that are not counted: in quarantine, or the reference sample. */
  readonly setAside: number
  /** The chance, 0 to 1, that waiting a season loses the last full regrowing. */
  readonly cost: number
  readonly onlySource: boolean
  /** Seeds that members take in a year. */
  readonly demand: number
  /** Being grown already, with nothing brought back and nothing failed yet. */
  readonly growing: boolean
}

/** A difference in cost that is too small to put one before the other. Common practice, no source. */
const SAME_COST = 0.005

/**
 * The order of the list, most urgent first.
 *
 * By state; then what nobody grows yet before what is growing; then what can still be sown before what cannot; then the
 * cost of waiting; then what is held nowhere else; then what members ask for; then by number.
 */
export function byUrgency(a: UrgencyFacts, b: UrgencyFacts): number {
  return (
    NEED_STATES.indexOf(a.state) - NEED_STATES.indexOf(b.state) ||
    Number(a.growing) - Number(b.growing) ||
    Number(a.living === 0) - Number(b.living === 0) ||
    steps(b.cost) - steps(a.cost) ||
    Number(b.onlySource) - Number(a.onlySource) ||
    b.demand - a.demand ||
    a.accessionId - b.accessionId
  )
}

function steps(cost: number): number {
  return Math.round(cost / SAME_COST)
}

/** The cost of waiting as a keeper would say it. */
export function costInWords(cost: number): string {
  if (cost < SAME_COST) return 'hardly any risk'
  if (cost > 1 - SAME_COST) return 'all but certain'
  const percent = Math.round(100 * cost)
  return `about ${Math.min(99, Math.max(1, percent))} in 100`
}

/** Where seed is that is not counted, and what to do: '300 seeds lie in quarantine or as the reference sample: ...'. */
export function setAsideInWords(seeds: number, unit: CountedUnit, manner: Manner): string {
  const lie = seeds === 1 ? 'lies' : 'lie'
  return `${countInWords(seeds, unit, manner)} ${lie} in quarantine or as the reference sample: look at them first.`
}

/** One sentence on what puts an accession where it stands in the list. `nextYear` is the season after this one. */
export function urgencyInWords(
  facts: UrgencyFacts,
  unit: CountedUnit,
  nextYear: number,
  manner: Manner,
): string {
  if (facts.state === 'none-left') return `No ${unit.one} is left here.`
  if (facts.living === 0) {
    return facts.setAside === 0
      ? `No living ${unit.one} is left here: ask for a duplicate.`
      : `No living ${unit.one} is counted here, but ${setAsideInWords(facts.setAside, unit, manner)}`
  }
  const waiting =
    facts.cost < SAME_COST
      ? `By the sowing of ${nextYear} there is hardly any risk that no full regrowing can be made`
      : `By the sowing of ${nextYear} no full regrowing can be made: ${costInWords(facts.cost)}`
  const more = [
    facts.onlySource ? 'held nowhere else that is known' : '',
    facts.demand >= 1
      ? `members take about ${countInWords(toFigures(Math.round(facts.demand), 2), unit, manner)} a year`
      : '',
  ].filter((part) => part !== '')
  return `${[waiting, ...more].join('; ')}.`
}
