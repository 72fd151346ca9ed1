import { type IsoDate, yearOf } from '../dates/iso-date.ts'
import { assertNever } from '../shared/assert-never.ts'
import type { Band, Threshold } from './band.ts'
import type { PaceRemark } from './equation.ts'
import { type Crossing, FAR_YEARS, type Forecast } from './forecast.ts'
import type { PaceModel } from './pace-model.ts'

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

const REMARKS: Readonly<Record<PaceRemark, string>> = {
  'drier-than-helps': 'Some of the time it was drier than helps; it counts as if at the limit.',
  'colder-than-known':
    'Some of the time it was colder than the figures reach; it counts as if no colder than that.',
  'moister-than-fitted': 'It is moister than the seed that the figures come from: this extrapolates.',
  'drier-than-fitted': 'It is drier than the seed that the figures come from: this extrapolates.',
  'warmer-than-fitted': 'It lay warmer than the seed that the figures come from: this extrapolates.',
  'colder-than-fitted': 'It lay colder than the seed that the figures come from: this extrapolates.',
}

/** What of a lot is known rather than assumed: its harvest year; its moisture and the climate where it lay. */
export interface Known {
  readonly harvest: boolean
  readonly keeping: boolean
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
    ...remarks.map((remark) => REMARKS[remark]),
    optimism(model),
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
