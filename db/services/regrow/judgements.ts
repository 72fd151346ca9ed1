import { addYears, DAYS_IN_YEAR, daysBetween } from '../../domain/dates/day-arithmetic.ts'
import type { IsoDate } from '../../domain/dates/iso-date.ts'
import { outlookAt } from '../../domain/needs/cost-of-waiting.ts'
import { originsOf } from '../../domain/needs/origins.ts'
import { type Season, seasonOf } from '../../domain/needs/season.ts'
import type { UrgencyFacts } from '../../domain/needs/urgency.ts'
import { DEMAND_YEARS } from '../../domain/needs/urgency.ts'
import { type LifeRow, livesOfAccessions } from '../../queries/lot-rows.ts'
import { sharedSeed, takenSince } from '../../queries/need-rows.ts'
import { AccessionCache } from '../book/accession-cache.ts'
import type { Reading } from '../book/context.ts'
import {
  type CollectionPolicy,
  countsTowardsKeeping,
  policyOf,
  seedsSetAside,
  standingOf,
} from '../book/living-stock.ts'
import { settingsOf } from '../book/settings.ts'
import { ageingLot } from '../forecast/viability-belief.ts'

/** How an accession stands and what waiting would cost, by itself: beside others and what is being grown, see Ranking. */
export interface Judgement extends Omit<UrgencyFacts, 'onlySource' | 'growing'> {
  readonly varietyId: number
  /** Whether a duplicate of it lies elsewhere. */
  readonly elsewhere: boolean
}

/** The judgement of every accession, recomputed only where something was written that touches it. */
export const judgements = new AccessionCache(judge)

function judge(reading: Reading, accessionIds: readonly number[]): ReadonlyMap<number, Judgement> {
  const policy = settingsOf(reading)
  const years = yearsTo(reading, seasonOf(reading.today, policy.sowingDay).nextSowing)
  const since = addYears(reading.today, -DEMAND_YEARS)
  const demand = new Map(
    takenSince(reading.sqlite, since, accessionIds).map(({ accessionId, seeds }) => [
      accessionId,
      seeds / DEMAND_YEARS,
    ]),
  )
  const originOf = originsOf(sharedSeed(reading.sqlite, accessionIds))
  const judged = new Map<number, Judgement>()
  let lots: LifeRow[] = []
  const close = () => {
    const [first] = lots
    if (first === undefined) return
    const accessionId = first.accessionId
    const { state, living } = standingOf(lots, policy)
    const wanted = demand.get(accessionId) ?? 0
    judged.set(accessionId, {
      accessionId,
      varietyId: first.varietyId,
      state,
      living: living.about,
      setAside: seedsSetAside(lots),
      cost: outlookAt(waitingFacts(lots, originOf, policy, wanted, reading.today), years).cost,
      demand: wanted,
      elsewhere: lots.some(isHeldElsewhere),
    })
    lots = []
  }
  for (const row of livesOfAccessions(reading.sqlite, accessionIds)) {
    if (lots[0] !== undefined && lots[0].accessionId !== row.accessionId) close()
    lots.push(row)
  }
  close()
  return judged
}

/** Years from today to a sowing, as a fraction. */
export function yearsTo(reading: Reading, day: Season['sowing']): number {
  return Math.max(0, daysBetween(reading.today, day) / DAYS_IN_YEAR)
}

/** What the cost of waiting is computed from: the lots that count towards keeping, by their origin, and what members take. */
export function waitingFacts(
  lots: readonly LifeRow[],
  originOf: (lotId: number) => number,
  policy: CollectionPolicy,
  demand: number,
  today: IsoDate,
) {
  const first = lots[0]
  if (first === undefined) throw new RangeError('An accession without lots has no outlook')
  const ageing = lots.filter(countsTowardsKeeping).map((row) => ageingLot(row, originOf(row.lotId), today))
  return { lots: ageing, policy: policyOf(first, policy), demand }
}

export function isHeldElsewhere(row: LifeRow): boolean {
  return row.role === 'duplicate-elsewhere' && row.balanceCount > 0
}
