import { eq } from 'drizzle-orm'
import type { ParsedInput, Value } from '../../contract/contract.ts'
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
import type { Reading } from '../book/context.ts'
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

export function getNeed(reading: Reading, input: ParsedInput<'regeneration.get'>): Value<'regeneration.get'> {
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
  const own = reading.db.select().from(accession).where(eq(accession.id, row.accession_id)).get()
  const ofCrop = reading.db.select().from(crop).where(eq(crop.id, row.crop_id)).get()
  const policy = policyOf(row, ranking.policy)
  const grade = row.own_grade ?? ranking.policy.grade
  const table = plantsFor(populationOf(row), grade)
  const plantsFrom =
    own?.ownPlants != null
      ? 'your own figure for this accession'
      : ofCrop?.ownPlants != null
        ? `your own figure for ${row.crop}: ${ofCrop.ownReason}`
        : row.mating_system === null
          ? `${table} plants, usual at ${grade} grade: how ${row.crop} is pollinated is not known`
          : `${row.crop} at ${grade} grade: ${table} plants (${breedingOf(row.mating_system)})`
  return {
    grade,
    gradeIsOwn: row.own_grade !== null,
    plants: policy.plants,
    plantsFrom,
    regrowings: policy.regrowings,
    threshold: thresholdOf(row, ranking.policy),
    assurance: row.own_assurance ?? ranking.policy.assurance,
  }
}

function arithmeticOf(
  reading: Reading,
  lots: readonly LotRow[],
  line: Value<'regeneration.list'>['needs'][number],
  ranking: Ranking,
): NeedRecord['arithmetic'] {
  const unit = countedUnit(lots[0]?.counted_unit ?? 'seed')
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
  const sum = `${row.lot_number}: ${countInWords(life.count, unit, manner)} x ${percent(life.viability)} ${aliveInWords(row, life)} = ${numberInWords(alive, manner)} living`
  return countsTowardsKeeping(row) ? sum : `${sum}; not counted here: ${whyNotCounted(row)}`
}

function aliveInWords({ tested_on }: LotRow, { basis, on }: RowLife): string {
  if (on === null || (basis !== 'tested' && basis !== 'forecast'))
    return basis === 'tested' ? `sprouted ${tested_on}` : 'assumed alive'
  return basis === 'tested' ? `alive, forecast from the test of ${tested_on}` : 'alive by forecast'
}

function whyNotCounted(row: LotRow): string {
  if (row.quarantine_reason !== null) return 'in quarantine'
  return row.role === 'reference' ? 'the reference sample' : 'held elsewhere'
}

function sowingInWords(
  lots: readonly LotRow[],
  line: Value<'regeneration.list'>['needs'][number],
  ranking: Ranking,
  unit: CountedUnit,
): string[] {
  const sown = (line.sow?.lots ?? []).flatMap(({ lotId, seeds }) => {
    const row = lots.find((lot) => lot.lot_id === lotId)
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
        `${countInWords(seeds, unit, manner)} of ${row.lot_number} x ${percent(life.viability)} alive x ${emergence} emergence = about ${number(Math.round(seeds * life.viability * policy.emergence))} plants`,
    )
    return [`${plants} plants: no lot alone is enough, several together are`, ...parts, assured]
  }
  const { viability, count } = first.life
  const wanted = seedsToSow(plants, viability, policy.emergence) ?? 0
  const sum = `${plants} plants / (${percent(viability)} alive x ${emergence} emergence) = ${countInWords(wanted, unit, manner)} of ${first.row.lot_number} on average`
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
  const originOf = originsOf(sharedSeed(reading.sqlite, [lots[0]?.accession_id ?? 0]))
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
  const rows = Map.groupBy(generationsOf(reading.sqlite, lots[0]?.accession_id ?? 0), (row) => row.lot_id)
  const all = [...rows.values()].flatMap(([row, ...more]) =>
    row === undefined
      ? []
      : [
          {
            lotId: row.lot_id,
            lotNumber: row.lot_number,
            generation: row.generation,
            plants: row.plants_grown,
            parentLotIds: [row, ...more].flatMap(({ parent_lot_id }) => parent_lot_id ?? []),
          },
        ],
  )
  const latest = lots
    .filter(countsTowardsKeeping)
    .toSorted((a, b) => b.generation - a.generation || b.balance_count - a.balance_count)[0]
  return driftTo(latest?.lot_id ?? 0, all, wanted)
}

function percent(part: number): string {
  return `${Math.round(100 * part)} %`
}
