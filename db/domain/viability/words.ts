import { type Message, message } from '../../messages/message.ts'
import { type IsoDate, yearOf } from '../dates/iso-date.ts'
import type { Band, Threshold } from './band.ts'
import type { ViabilityConstants } from './constants.ts'
import { coldestKnown, type PaceRemark, WORKING } from './equation.ts'
import { type Crossing, FAR_YEARS, type Forecast } from './forecast.ts'
import type { PaceModel } from './pace-model.ts'
import type { Span } from './span.ts'

/** The share alive on a day with its band: 'About 84 % alive, between 69 % and 94 %, on 14 Mar 2026.' */
export function aliveTold({ low, middle, high }: Band, on: IsoDate): Message {
  const parts = { low: { part: low }, middle: { part: middle }, high: { part: high } }
  return message('forecast.alive', { ...parts, on: { day: on } })
}

/** The threshold as the keeper reads it: '85 %' or '85 % of its start'. */
export function thresholdTold({ part, of }: Threshold): Message {
  return message('forecast.threshold', { part: { part }, of: of === 'all-seeds' ? 'all' : 'start' })
}

/** When a lot drops below its threshold: 'It is too weak, below 85 %, from about 2031: between 2028 and 2040.' */
export function crossingTold({ early, middle, late }: Crossing, of: Threshold, today: IsoDate): Message {
  const threshold = thresholdTold(of)
  const until = late === null ? 'open' : String(yearOf(late))
  if (late !== null && late <= today) return message('forecast.below-surely', { threshold })
  if (middle === null) return message('forecast.above-far', { threshold, years: FAR_YEARS })
  if (middle <= today) return message('forecast.below-probably', { threshold, until })
  return message('forecast.too-weak', {
    threshold,
    year: String(yearOf(middle)),
    from: early === null || early <= today ? 'now' : String(yearOf(early)),
    until,
  })
}

/** What a remark means for the card, with the figures of the set; of a rule of thumb there are none. */
function remarkTold(remark: PaceRemark, set: ViabilityConstants | null): Message {
  switch (remark) {
    case 'drier-than-helps':
    case 'frozen-unfitted':
      return message(`forecast.${remark}`)
    case 'colder-than-known':
      return colderTold(set)
    case 'moister-than-fitted':
    case 'drier-than-fitted':
      return message(`forecast.${remark}`, fitted(set?.fittedPercent))
    case 'warmer-than-fitted':
    case 'colder-than-fitted':
      return message(`forecast.${remark}`, fitted(set?.fittedCelsius))
  }
}

function fitted(span: Span | null | undefined) {
  return span == null ? { known: 'no', from: 0, to: 0 } : { known: 'yes', from: span.from, to: span.to }
}

function colderTold(set: ViabilityConstants | null): Message {
  if (set === null || coldestKnown(set) <= WORKING.coldest) return message('forecast.colder-than-known')
  return message('forecast.colder-than-turn', { celsius: Math.round(10 * coldestKnown(set)) / 10 })
}

/** What of a lot is known rather than assumed: its harvest year; its moisture and the climate where it lay. */
export interface Known {
  readonly harvest: boolean
  readonly keeping: boolean
  /** Whether time without readings goes by the usual day of a place that has some. */
  readonly usualDays: boolean
  /** The years that its seed is said to keep, where they were weighed in beside the constants; else null. */
  readonly yearsWeighedIn: readonly [number, number] | null
  /** The numbers of lots that were poured together, and of the one thought least alive; null for a lot of one origin. */
  readonly merged: { readonly numbers: readonly string[]; readonly weakest: string } | null
}

/** What a forecast rests on and what speaks against it, a sentence each, the most telling first. */
export function howSure(
  { learnt: { used, setAside, disagree } }: Forecast,
  model: PaceModel,
  known: Known,
  remarks: readonly PaceRemark[],
): Message[] {
  const tests = used.length
  const promises = model.basis === 'rule-of-thumb' ? 'rule-of-thumb' : 'equation-promises'
  return [
    tests === 0 ? message('forecast.never-tested') : message('forecast.rests-on-tests', { tests }),
    ...mergedTold(known.merged),
    ...setAside.map(({ on, sprouted, tested }) =>
      message('forecast.test-set-aside', { on: { day: on }, sprouted, tested }),
    ),
    ...(disagree ? [message('forecast.tests-disagree')] : []),
    ...(known.harvest ? [] : [message('forecast.harvest-unknown')]),
    ...(known.keeping ? [] : [message('forecast.keeping-assumed')]),
    ...(known.usualDays ? [message('forecast.usual-days')] : []),
    ...yearsTold(known.yearsWeighedIn),
    ...remarks.map((remark) => remarkTold(remark, model.constants)),
    ...(model.basis === 'constants-from-memory' ? [message('forecast.constants-from-memory')] : []),
    message(`forecast.${promises}`),
  ]
}

function mergedTold(merged: Known['merged']): Message[] {
  if (merged === null) return []
  const { numbers, weakest } = merged
  return [message('forecast.poured-together', { lots: { list: numbers }, weakest })]
}

function yearsTold(years: Known['yearsWeighedIn']): Message[] {
  if (years === null) return []
  const [low, high] = years
  return [message('forecast.years-weighed-in', { low: low === high ? 0 : low, high })]
}
