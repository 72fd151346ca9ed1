import { type Message, message } from '../../messages/message.ts'
import { addDays, addYears, daysBetween } from '../dates/day-arithmetic.ts'
import type { IsoDate } from '../dates/iso-date.ts'
import type { Threshold } from '../viability/band.ts'
import { thresholdTold } from '../viability/words.ts'

/** How far a rule is to be trusted. */
export type RuleConfidence = 'seen' | 'seen-labels-inferred' | 'from-memory'

/** A date by which a lot should be tested, with the rule that says so. */
export interface TestDate {
  readonly on: IsoDate
  readonly because: Message
  readonly source: Message
  readonly confidence: RuleConfidence
}

/** What decides when a lot is tested next. */
export interface MonitoringFacts {
  readonly receivedOn: IsoDate
  /** The latest result; null: never tested. Share germinated, 0 to 1. */
  readonly lastTest: { readonly on: IsoDate; readonly share: number } | null
  /** Kept frozen, as a base collection is, or cool or at room temperature, as working stock is. */
  readonly frozen: boolean
  /** Oil as a part of dry weight in per cent; null where not known. */
  readonly oilPercent: number | null
  /** When the lot is forecast to cross its threshold; null where there is no forecast. */
  readonly forecastCrossing: IsoDate | null
  readonly threshold: Threshold
}

/** From this much oil on seed counts as oily. The handbook gives no figure; common practice, no source. */
const OILY_FROM_PERCENT = 15

/**
 * Years to the next test, by what germinated: at working 4-5 C non-oily and oily, base -20 C non-oily and oily.
 *
 * Rao et al. 2006, Manual of Seed Handling in Genebanks (Handbook No. 8), table 8.1: the sixteen numbers seen, the row
 * labels inferred.
 */
const HANDBOOK_YEARS: readonly (readonly [from: number, years: readonly [number, number, number, number]])[] =
  [
    [0.95, [12, 8, 20, 12]],
    [0.9, [8, 5, 15, 8]],
    [0.85, [5, 3, 10, 5]],
    [0, [3, 1, 5, 2]],
  ]

/** The handbook's interval in years for a share germinated, 0 to 1. */
export function handbookYears(share: number, frozen: boolean, oily: boolean): number {
  const years = HANDBOOK_YEARS.find(([from]) => share >= from)?.[1]
  const found = years?.[(frozen ? 2 : 0) + (oily ? 1 : 0)]
  if (found === undefined) throw new RangeError(`Not a share that germinated: ${share}`)
  return found
}

/** Every date that a published rule or the forecast gives, soonest first. The first is when to test. */
export function nextTestDates(facts: MonitoringFacts): readonly [TestDate, ...TestDate[]] {
  const first = facts.lastTest === null ? firstTest(facts) : null
  const dates = facts.lastTest === null ? [] : laterTests(facts, facts.lastTest)
  const forecast = byForecast(facts)
  const [soonest, ...rest] = [first, ...dates, forecast]
    .filter((date) => date !== null)
    .toSorted((one, other) => (one.on < other.on ? -1 : 1))
  if (soonest === undefined) throw new Error('No rule gave a date')
  return [soonest, ...rest]
}

function firstTest(facts: MonitoringFacts): TestDate {
  return {
    on: addYears(facts.receivedOn, 1),
    because: message('germination.why-new'),
    source: message('germination.source-fao-first'),
    confidence: 'seen',
  }
}

function laterTests(facts: MonitoringFacts, last: NonNullable<MonitoringFacts['lastTest']>): TestDate[] {
  const oily = (facts.oilPercent ?? 0) >= OILY_FROM_PERCENT
  const years = handbookYears(last.share, facts.frozen, oily)
  const rule = facts.frozen ? 10 : 5
  return [
    {
      on: addYears(last.on, years),
      because: message('germination.why-handbook', {
        years,
        share: { part: last.share },
        oily: oily ? 'yes' : 'no',
        kept: facts.frozen ? 'frozen' : 'cool',
      }),
      source: message('germination.source-handbook'),
      confidence: 'seen-labels-inferred',
    },
    {
      on: addYears(last.on, rule),
      because: message(facts.frozen ? 'germination.why-frozen' : 'germination.why-working'),
      source: message('germination.source-ibpgr'),
      confidence: 'seen',
    },
  ]
}

/** A lot that was tested is not tested again sooner than this, whatever is forecast. Common practice, no source. */
const LEAST_YEARS_BETWEEN = 1

/**
 * A third of the way to the crossing, so that the loss is seen coming; forty years at most, and at least a year after the
 * last test, since on a warm shelf a third of the way may be a few weeks and every test spends seed.
 */
function byForecast(facts: MonitoringFacts): TestDate | null {
  if (facts.forecastCrossing === null) return null
  const from = facts.lastTest?.on ?? facts.receivedOn
  const third = Math.floor(daysBetween(from, facts.forecastCrossing) / 3)
  const longest = daysBetween(from, addYears(from, 40))
  const least = facts.lastTest === null ? 0 : daysBetween(from, addYears(from, LEAST_YEARS_BETWEEN))
  return {
    on: addDays(from, Math.min(Math.max(least, third), longest)),
    because: whyByForecast(facts, third, facts.lastTest === null ? null : least),
    source: message('germination.source-fao-forecast'),
    confidence: 'from-memory',
  }
}

/** Why the forecast asks for a test; `least` is in days, null where nothing was tested yet. */
function whyByForecast(facts: MonitoringFacts, third: number, least: number | null): Message {
  const { forecastCrossing, threshold: part } = facts
  if (forecastCrossing === null || (least === null && third <= 0)) return message('germination.why-below')
  const when = { threshold: thresholdTold(part), on: { day: forecastCrossing } }
  if (least !== null && third < least) return message('germination.why-year', when)
  return message('germination.why-before', { ...when, again: least === null ? 'no' : 'yes' })
}
