import { eq } from 'drizzle-orm'
import { refuse } from '../../contract/refusal.ts'
import type { NeedLine, NeedRecord } from '../../contract/regeneration-operations.ts'
import type { Untold } from '../../contract/told.ts'
import { isPiece } from '../../domain/crops/pieces.ts'
import { addYears } from '../../domain/dates/day-arithmetic.ts'
import { timesIn100 } from '../../domain/needs/assurance.ts'
import { outlookAt } from '../../domain/needs/cost-of-waiting.ts'
import { driftTo } from '../../domain/needs/generations.ts'
import { originsOf } from '../../domain/needs/origins.ts'
import { SEASONS_AHEAD } from '../../domain/needs/outlook.ts'
import { breedingOf, plantsFor } from '../../domain/needs/population-goal.ts'
import { seedsToSow } from '../../domain/needs/sowing.ts'
import { DEMAND_YEARS } from '../../domain/needs/urgency.ts'
import { type Message, message } from '../../messages/message.ts'
import { type LotRow, lotsOfAccessions } from '../../queries/lot-rows.ts'
import { generationsOf, sharedSeed, takenByYear } from '../../queries/need-rows.ts'
import { crop } from '../../schema/reference-tables.ts'
import { accession } from '../../schema/stock-tables.ts'
import type { Reading, Reads } from '../book/context.ts'
import {
  countsTowardsKeeping,
  lifeOf,
  policyOf,
  populationOf,
  type RowLife,
  thresholdOf,
} from '../book/living-stock.ts'
import { waitingFacts, yearsTo } from './judgements.ts'
import { needLines, type Ranking, rankNeeds } from './regrow-needs.ts'
import { rescueOf } from './sowing-and-rescue.ts'

export const getNeed: Reads<'regeneration.get'> = (reading, input) => {
  const { accessionId } = input
  const ranking = rankNeeds(reading)
  const index = ranking.ranked.findIndex((facts) => facts.accessionId === accessionId)
  const facts = ranking.ranked[index]
  const lots = lotsOfAccessions(reading.sqlite, [accessionId])
  const first = lots[0]
  if (facts === undefined || first === undefined) {
    refuse('not-found', message('needs.accession-gone'), { field: 'accessionId' })
  }
  const [line] = needLines(reading, ranking, [{ facts, rank: index + 1 }])
  if (line === undefined) throw new Error('A ranked accession without its line')
  const policy = policyOf(first, ranking.policy)
  const drift = driftOf(reading, lots, policy.plants)
  const drifts = !isPiece(first.countedUnit)
  return {
    ...line,
    ...policyShown(reading, first, ranking),
    arithmetic: arithmeticOf(reading, lots, line, ranking),
    outlook:
      line.state === 'not-kept' || isPiece(first.countedUnit)
        ? []
        : outlookOf(reading, lots, ranking, facts.demand),
    rescue: [...rescueOf(reading, lots, ranking.policy, line.sow).forKeeper],
    generations: drift.line.map(({ lotNumber, generation, plants }) => ({ lotNumber, generation, plants })),
    effectivePopulation: drifts ? drift.effective : null,
    drift: drifts ? [...drift.told] : [message('pieces.no-drift')],
  }
}

function policyShown(reading: Reading, row: LotRow, ranking: Ranking) {
  const own = reading.db.select().from(accession).where(eq(accession.id, row.accessionId)).get()
  const ofCrop = reading.db.select().from(crop).where(eq(crop.id, row.cropId)).get()
  const policy = policyOf(row, ranking.policy)
  const grade = row.ownGrade ?? ranking.policy.grade
  const table = plantsFor(populationOf(row), grade)
  const plantsFrom =
    own?.ownPlants != null
      ? message('needs.plants-own')
      : ofCrop?.ownPlants != null
        ? message('needs.plants-own-crop', { crop: row.crop, reason: ofCrop.ownReason ?? '' })
        : row.matingSystem === null
          ? message('needs.plants-usual', { plants: table, grade, crop: row.crop })
          : message('needs.plants-table', {
              crop: row.crop,
              grade,
              plants: table,
              breeding: breedingOf(row.matingSystem),
            })
  return {
    grade,
    gradeIsOwn: row.ownGrade !== null,
    plants: policy.plants,
    plantsFrom,
    regrowings: policy.regrowings,
    threshold: thresholdOf(row, ranking.policy),
    assurance: row.ownAssurance ?? ranking.policy.assurance,
  }
}

function arithmeticOf(
  reading: Reading,
  lots: readonly LotRow[],
  line: Untold<NeedLine>,
  ranking: Ranking,
): Untold<NeedRecord>['arithmetic'] {
  const unit = lots[0]?.countedUnit ?? 'seed'
  const taken = takenByYear(reading.sqlite, line.accessionId).slice(0, DEMAND_YEARS + 1)
  return [
    { heading: message('needs.sums-keep'), lines: line.stock.arithmetic },
    { heading: message('needs.sums-lots'), lines: lots.map(sumOfLot) },
    { heading: message('needs.sums-sow'), lines: sumsOfSowing(lots, line, ranking) },
    {
      heading: message('needs.sums-taken'),
      lines:
        taken.length === 0
          ? [message('needs.taken-nothing')]
          : [
              ...taken.map(({ year, seeds }) =>
                message('needs.taken-in', { year: String(year), seeds: { seeds, unit } }),
              ),
              message('needs.taken-a-year', { years: DEMAND_YEARS, seeds: Math.round(line.demand) }),
            ],
    },
  ]
}

function sumOfLot(row: LotRow): Message {
  const life = lifeOf(row)
  return message('needs.sum-lot', {
    lot: row.lotNumber,
    seeds: { seeds: life.count, unit: row.countedUnit },
    alive: { part: life.viability },
    ...sourceOfLife(row, life),
    living: Math.round(life.count * life.viability),
    counted: countsTowardsKeeping(row) ? 'yes' : whyNotCounted(row),
  })
}

function sourceOfLife({ testedOn }: LotRow, { basis, on }: RowLife) {
  const tested = { day: testedOn ?? '1970-01-01' }
  if (basis === 'season') return { basis, on: tested }
  if (basis === 'tested') return { basis: on === null ? 'sprouted' : 'test', on: tested }
  return { basis: on !== null && basis === 'forecast' ? 'forecast' : 'assumed', on: tested }
}

function whyNotCounted(row: LotRow): 'quarantine' | 'reference' | 'elsewhere' {
  if (row.quarantineReason !== null) return 'quarantine'
  return row.role === 'reference' ? 'reference' : 'elsewhere'
}

function sumsOfSowing(lots: readonly LotRow[], line: Untold<NeedLine>, ranking: Ranking): Message[] {
  const sown = (line.sow?.lots ?? []).flatMap(({ lotId, seeds }) => {
    const row = lots.find((lot) => lot.lotId === lotId)
    return row === undefined ? [] : [{ row, seeds, life: lifeOf(row) }]
  })
  const unit = lots[0]?.countedUnit ?? 'seed'
  const [first] = sown
  if (line.sow === null || first === undefined) return [message('needs.none-living-to-sow', { unit })]
  const { plants, emergence } = policyOf(first.row, ranking.policy)
  const times = timesIn100(line.sow.chance)
  const assured = message('needs.sum-assured', { seeds: line.sow.seeds, times, plants })
  if (sown.length > 1) {
    const parts = sown.map(({ row, seeds, life: { viability } }) =>
      message('needs.sum-part', {
        seeds: { seeds, unit },
        lot: row.lotNumber,
        alive: { part: viability },
        emergence,
        plants: Math.round(seeds * viability * emergence),
      }),
    )
    return [message('needs.sum-several', { plants }), ...parts, assured]
  }
  const { viability, count } = first.life
  const sum = message('needs.sum-sow', {
    plants,
    alive: { part: viability },
    emergence,
    seeds: { seeds: seedsToSow(plants, viability, emergence) ?? 0, unit },
    lot: first.row.lotNumber,
  })
  return line.sow.enough ? [sum, assured] : [sum, message('needs.sum-risk', { count, most: line.sow.seeds })]
}

function outlookOf(
  reading: Reading,
  lots: readonly LotRow[],
  ranking: Ranking,
  demand: number,
): NeedRecord['outlook'] {
  const originOf = originsOf(sharedSeed(reading.sqlite, [lots[0]?.accessionId ?? 0]))
  const facts = waitingFacts(lots, originOf, ranking.policy, demand, reading.today)
  return Array.from({ length: SEASONS_AHEAD }, (_, ahead) => {
    const sowing = addYears(ranking.season.sowing, ahead)
    const { living, cost } = outlookAt(facts, yearsTo(reading, sowing))
    const band = 2 * living.deviation
    return {
      year: ranking.season.year + ahead,
      sowing,
      living: Math.round(living.mean),
      low: Math.max(0, Math.floor(living.mean - band)),
      high: Math.ceil(Math.min(living.most, living.mean + band)),
      cost,
    }
  })
}

function driftOf(reading: Reading, lots: readonly LotRow[], wanted: number) {
  const rows = Map.groupBy(generationsOf(reading.sqlite, lots[0]?.accessionId ?? 0), (row) => row.lotId)
  const all = [...rows.values()].flatMap(([row, ...more]) =>
    row === undefined
      ? []
      : [
          {
            lotId: row.lotId,
            lotNumber: row.lotNumber,
            generation: row.generation,
            plants: row.plants,
            parentLotIds: [row, ...more].flatMap(({ parentLotId }) => parentLotId ?? []),
          },
        ],
  )
  const latest = lots
    .filter(countsTowardsKeeping)
    .toSorted((a, b) => b.generation - a.generation || b.balanceCount - a.balanceCount)[0]
  return driftTo(latest?.lotId ?? 0, all, wanted)
}
