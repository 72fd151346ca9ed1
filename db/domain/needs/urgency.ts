import { type Message, message } from '../../messages/message.ts'
import { toFigures } from '../amounts/in-words.ts'
import type { CountedUnitName } from '../crops/counted-unit.ts'
import { NEED_STATES, type NeedState } from './need.ts'

/** Years over which what members took is averaged. Common practice, no source. */
export const DEMAND_YEARS = 3

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

type Risk = 'hardly' | 'some' | 'sure'

function riskOf(cost: number): Risk {
  if (cost < SAME_COST) return 'hardly'
  return cost > 1 - SAME_COST ? 'sure' : 'some'
}

/** A chance in hundredths, never none nor all. */
function hundredthsOf(cost: number): number {
  return Math.min(99, Math.max(1, Math.round(100 * cost)))
}

/** The cost of waiting as a keeper would say it. */
export function toldCost(cost: number): Message {
  switch (riskOf(cost)) {
    case 'hardly':
      return message('needs.cost-hardly')
    case 'some':
      return message('needs.cost-about', { hundredths: hundredthsOf(cost) })
    case 'sure':
      return message('needs.cost-sure')
  }
}

/** Where seed is that is not counted, and what to do: '300 seeds lie in quarantine or as the reference sample: ...'. */
export function toldSetAside(seeds: number, unit: CountedUnitName): Message {
  return message('needs.set-aside', { count: seeds, seeds: { seeds, unit } })
}

/** One sentence on what puts an accession where it stands in the list. `nextYear` is the season after this one. */
export function toldUrgency(facts: UrgencyFacts, unit: CountedUnitName, nextYear: number): Message {
  if (facts.state === 'not-kept') return message('keeping.nothing-to-regrow')
  if (facts.state === 'none-left') return message('needs.why-none', { unit })
  if (facts.living === 0) {
    return facts.setAside === 0
      ? message('needs.why-none-living', { unit })
      : message('needs.why-set-aside', { unit, aside: toldSetAside(facts.setAside, unit) })
  }
  return message('needs.why-waiting', {
    risk: riskOf(facts.cost),
    year: String(nextYear),
    hundredths: hundredthsOf(facts.cost),
    only: facts.onlySource ? 'yes' : 'no',
    wanted: facts.demand >= 1 ? 'yes' : 'no',
    demand: { seeds: toFigures(Math.round(facts.demand), 2), unit },
  })
}
