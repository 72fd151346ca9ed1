import { eq } from 'drizzle-orm'
import type { Result } from '../../contract/contract.ts'
import { refuse } from '../../contract/refusal.ts'
import type { NeedRecord } from '../../contract/regeneration-operations.ts'
import { countInWords, type Manner, numberInWords } from '../../domain/amounts/in-words.ts'
import { type CountedUnit, countedUnit } from '../../domain/crops/counted-unit.ts'
import { addYears } from '../../domain/dates/day-arithmetic.ts'
import { chanceInWords } from '../../domain/needs/assurance.ts'
import { outlookAt } from '../../domain/needs/cost-of-waiting.ts'
import { driftTo } from '../../domain/needs/generations.ts'
import { originsOf } from '../../domain/needs/origins.ts'
import { breedingOf, plantsFor } from '../../domain/needs/population-goal.ts'
import { seedsToSow } from '../../domain/needs/sowing.ts'
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
import { DEMAND_YEARS, waitingFacts, yearsTo } from './judgements.ts'
import { needLines, type Ranking, rankNeeds } from './regrow-needs.ts'
import { rescueOf } from './sowing-and-rescue.ts'

/** Seasons that the outlook goes ahead. */
const SEASONS_AHEAD = 5

export const getNeed: Reads<'regeneration.get'> = (reading, input) => {
  const { accessionId } = input
  const ranking = rankNeeds(reading)
  const index = ranking.ranked.findIndex((facts) => facts.accessionId === accessionId)
  const facts = ranking.ranked[index]
  const lots = lotsOfAccessions(reading.sqlite, [accessionId])
  const first = lots[0]
  if (facts === undefined || first === undefined) {
    refuse('not-found', 'That accession is not in the book.', { field: 'accessionId' })
  }
  const [line] = needLines(reading, ranking, [{ facts, rank: index + 1 }])
  if (line === undefined) throw new Error('A ranked accession without its line')
  const policy = policyOf(first, ranking.policy)
  const drift = driftOf(reading, lots, policy.plants)
  return {
    ...line,
    ...policyShown(reading, first, ranking),
    arithmetic: arithmeticOf(reading, lots, line, ranking),
    outlook: outlookOf(reading, lots, ranking, facts.demand),
    rescue: [...rescueOf(reading, lots, ranking.policy, line.sow).forKeeper],
    generations: drift.line.map(({ lotNumber, generation, plants }) => ({ lotNumber, generation, plants })),
    effectivePopulation: drift.effective,
    drift: drift.words,
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
      ? 'your own figure for this accession'
      : ofCrop?.ownPlants != null
        ? `your own figure for ${row.crop}: ${ofCrop.ownReason}`
        : row.matingSystem === null
          ? `${table} plants, usual at ${grade} grade: how ${row.crop} is pollinated is not known`
          : `${row.crop} at ${grade} grade: ${table} plants (${breedingOf(row.matingSystem)})`
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
  line: Result<'regeneration.list'>['needs'][number],
  ranking: Ranking,
): NeedRecord['arithmetic'] {
  const unit = countedUnit(lots[0]?.countedUnit ?? 'seed')
  const manner = ranking.policy
  const taken = takenByYear(reading.sqlite, line.accessionId).slice(0, DEMAND_YEARS + 1)
  return [
    { heading: 'To keep', lines: line.stock.arithmetic },
    { heading: 'In each lot', lines: lots.map((row) => lotInWords(row, unit, manner)) },
    { heading: 'To sow', lines: sowingInWords(lots, line, ranking, unit) },
    {
      heading: 'What members took',
      lines:
        taken.length === 0
          ? ['nothing so far']
          : [
              ...taken.map(({ year, seeds }) => `${year}: ${countInWords(seeds, unit, manner)}`),
              `a year, over the last ${DEMAND_YEARS}: ${numberInWords(Math.round(line.demand), manner)}`,
            ],
    },
  ]
}

function lotInWords(row: LotRow, unit: CountedUnit, manner: Manner): string {
  const life = lifeOf(row)
  const alive = Math.round(life.count * life.viability)
  const sum = `${row.lotNumber}: ${countInWords(life.count, unit, manner)} x ${percent(life.viability)} ${aliveInWords(row, life)} = ${numberInWords(alive, manner)} living`
  return countsTowardsKeeping(row) ? sum : `${sum}; not counted here: ${whyNotCounted(row)}`
}

function aliveInWords({ testedOn }: LotRow, { basis, on }: RowLife): string {
  if (on === null || (basis !== 'tested' && basis !== 'forecast'))
    return basis === 'tested' ? `sprouted ${testedOn}` : 'assumed alive'
  return basis === 'tested' ? `alive, forecast from the test of ${testedOn}` : 'alive by forecast'
}

function whyNotCounted(row: LotRow): string {
  if (row.quarantineReason !== null) return 'in quarantine'
  return row.role === 'reference' ? 'the reference sample' : 'held elsewhere'
}

function sowingInWords(
  lots: readonly LotRow[],
  line: Result<'regeneration.list'>['needs'][number],
  ranking: Ranking,
  unit: CountedUnit,
): string[] {
  const sown = (line.sow?.lots ?? []).flatMap(({ lotId, seeds }) => {
    const row = lots.find((lot) => lot.lotId === lotId)
    return row === undefined ? [] : [{ row, seeds, life: lifeOf(row) }]
  })
  const [first] = sown
  if (line.sow === null || first === undefined) return [`no living ${unit.one} to sow`]
  const manner = ranking.policy
  const { plants, ...policy } = policyOf(first.row, manner)
  const number = (value: number) => numberInWords(value, manner, 4)
  const emergence = number(policy.emergence)
  const assured = `sown ${number(line.sow.seeds)}: ${chanceInWords(line.sow.chance)} all ${plants} plants come up, with the doubt of both`
  if (sown.length > 1) {
    const parts = sown.map(
      ({ row, seeds, life }) =>
        `${countInWords(seeds, unit, manner)} of ${row.lotNumber} x ${percent(life.viability)} alive x ${emergence} emergence = about ${number(Math.round(seeds * life.viability * policy.emergence))} plants`,
    )
    return [`${plants} plants: no lot alone is enough, several together are`, ...parts, assured]
  }
  const { viability, count } = first.life
  const wanted = seedsToSow(plants, viability, policy.emergence) ?? 0
  const sum = `${plants} plants / (${percent(viability)} alive x ${emergence} emergence) = ${countInWords(wanted, unit, manner)} of ${first.row.lotNumber} on average`
  return line.sow.enough
    ? [sum, assured]
    : [sum, `it holds ${number(count)}: no full regrowing; risk at most ${number(line.sow.seeds)}`]
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

function percent(part: number): string {
  return `${Math.round(100 * part)} %`
}
