import { type IsoDate, yearOf } from '../dates/iso-date.ts'
import { assertNever } from '../shared/assert-never.ts'
import type { Band, Threshold } from './band.ts'
import type { ViabilityConstants } from './constants.ts'
import { coldestKnown, type PaceRemark, WORKING } from './equation.ts'
import { type Crossing, FAR_YEARS, type Forecast } from './forecast.ts'
import type { PaceModel } from './pace-model.ts'
import type { Span } from './span.ts'

function percent(part: number): string {
  return `${Math.round(100 * part)} %`
}

/** The share alive with its band: 'about 84 % alive, between 69 % and 94 %'. */
export function aliveInWords({ low, middle, high }: Band): string {
  return `about ${percent(middle)} alive, between ${percent(low)} and ${percent(high)}`
}

/** The threshold as the keeper reads it: '85 %' or '85 % of its start'. */
export function thresholdInWords({ part, of }: Threshold): string {
  return of === 'all-seeds' ? percent(part) : `${percent(part)} of its start`
}

/** When a lot crosses its threshold: 'falls below 85 % in about 2031, between 2028 and 2040'. */
export function crossingInWords(
  { early, middle, late }: Crossing,
  threshold: Threshold,
  today: IsoDate,
): string {
  const below = thresholdInWords(threshold)
  if (late !== null && late <= today) return `is almost surely below ${below} already`
  const until = late === null ? 'more than a lifetime' : `${yearOf(late)}`
  if (middle !== null && middle <= today)
    return `is probably below ${below} already${late === null ? '' : `, but may hold until ${until}`}`
  if (middle === null) return `stays above ${below} for longer than ${FAR_YEARS} years, as far as can be told`
  const soonest = early !== null && early <= today ? 'now' : `${early === null ? '' : yearOf(early)}`
  return `falls below ${below} in about ${yearOf(middle)}, between ${soonest} and ${until}`
}

/** What a remark means for the card, with the figures of the set; of a rule of thumb there are none. */
function remarkInWords(remark: PaceRemark, set: ViabilityConstants | null): string {
  switch (remark) {
    case 'drier-than-helps':
      return 'Some of the time it was drier than helps; it counts as if at the limit.'
    case 'colder-than-known':
      return colderInWords(set)
    case 'moister-than-fitted':
      return `It is moister than the ${seedFitted(set?.fittedPercent, '%')}: this extrapolates.`
    case 'drier-than-fitted':
      return `It is drier than the ${seedFitted(set?.fittedPercent, '%')}: this extrapolates.`
    case 'frozen-unfitted':
      return 'Seed kept frozen for thirty years did worse than the equation says (PMC7285074): the band is wider for it.'
    case 'warmer-than-fitted':
      return `It lay warmer than the ${seedFitted(set?.fittedCelsius, '°C')}: this extrapolates.`
    case 'colder-than-fitted':
      return `It lay colder than the ${seedFitted(set?.fittedCelsius, '°C')}: this extrapolates.`
    default:
      return assertNever(remark, 'A remark has no wording yet')
  }
}

function seedFitted(span: Span | null | undefined, unit: string): string {
  const figures = span == null ? '' : `, ${span.from} to ${span.to} ${unit}`
  return `seed that the figures come from${figures}`
}

function colderInWords(set: ViabilityConstants | null): string {
  if (set === null || coldestKnown(set) <= WORKING.coldest)
    return 'Some of the time it was colder than the figures reach; it counts as if no colder than that.'
  const turn = Math.round(10 * coldestKnown(set)) / 10
  return `Some of the time it was colder than ${turn} °C, where the curve of its constants turns and would let colder seed die sooner; it counts as if no colder, so it may well last longer than told here.`
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
): string[] {
  return [
    testsInWords(used.length),
    ...mergedInWords(known.merged),
    ...setAside.map(
      ({ on, sprouted, tested }) =>
        `The test of ${on}, ${sprouted} of ${tested}, is set aside: clearly more sprouted later, so seed was dormant then.`,
    ),
    ...(disagree ? ['Its tests fit no one curve: something is wrong with one of them. Test again.'] : []),
    ...(known.harvest ? [] : ['Its harvest year is not known: it may be older than it is taken to be.']),
    ...(known.keeping
      ? []
      : [
          'Its moisture or the climate of a place where it lay is assumed. Measure them for a narrower band.',
        ]),
    ...(known.usualDays
      ? [
          'Time without readings, before and to come, goes by the usual day of the place: a week that failed counts once, with its own days.',
        ]
      : []),
    ...yearsInWords(known.yearsWeighedIn),
    ...remarks.map((remark) => remarkInWords(remark, model.constants)),
    ...(model.basis === 'constants-from-memory'
      ? [
          'The constants of its crop are from memory and were not read in their source: the band is wider for it.',
        ]
      : []),
    optimism(model),
  ]
}

function mergedInWords(merged: Known['merged']): string[] {
  if (merged === null) return []
  const numbers = `${merged.numbers.slice(0, -1).join(', ')} and ${merged.numbers.at(-1)}`
  return [
    `${numbers} were poured together: it is told as the one thought least alive, ${merged.weakest}, so more of it may live. A test of the whole would tell.`,
  ]
}

function yearsInWords(years: Known['yearsWeighedIn']): string[] {
  if (years === null) return []
  const [low, high] = years
  const said = low === high ? `${low}` : `${low} to ${high}`
  return [
    `As neither was measured, the ${said} years that its seed is said to keep are weighed in beside the equation: a rule of thumb, so the band is wide.`,
  ]
}

function testsInWords(tests: number): string {
  if (tests === 0)
    return 'Never tested: this is what seed of its crop usually does, kept as it was. A test would tell far more.'
  return tests === 1 ? 'It rests on one test of the lot.' : `It rests on ${tests} tests of the lot.`
}

function optimism({ basis }: PaceModel): string {
  switch (basis) {
    case 'constants-seen':
    case 'constants-from-memory':
      return 'The equation is known to promise too much: seed kept for decades did worse, often much worse (Solberg et al. 2020). It is let run half as fast again here, which is judgement; tests correct it.'
    case 'rule-of-thumb':
      return 'No constants are published for this crop and none are borrowed: this is a rule of thumb from the years that its seed is said to keep. Tests correct it.'
    default:
      return assertNever(basis, 'A basis has no wording yet')
  }
}
