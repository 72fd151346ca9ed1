import type { Sowing } from '../../contract/regeneration-operations.ts'
import { addYears } from '../../domain/dates/day-arithmetic.ts'
import { isKept } from '../../domain/keeping/keeping.ts'
import { plantsFor } from '../../domain/needs/population-goal.ts'
import { adviseRescue, PEOPLE_SINCE_YEARS, type RescueAdvice } from '../../domain/needs/rescue.ts'
import { type SowableLot, sowingAdvice } from '../../domain/needs/sowing.ts'
import { type Message, message } from '../../messages/message.ts'
import type { LotRow } from '../../queries/lot-rows.ts'
import { peopleWithSeed, rescueCrop } from '../../queries/need-rows.ts'
import type { Reading } from '../book/context.ts'
import {
  type CollectionPolicy,
  countsTowardsKeeping,
  lifeOf,
  policyOf,
  populationOf,
  seedsSetAside,
} from '../book/living-stock.ts'
import { beliefIn } from '../forecast/viability-belief.ts'

const NO_RESCUE: RescueAdvice = { forKeeper: [], forGrower: [] }

/** What to sow of an accession for one regrowing, the same on card, plan and grower sheet; null where nothing here lives. */
export function sowingOf(reading: Reading, lots: readonly LotRow[], policy: CollectionPolicy): Sowing | null {
  const [first] = lots
  if (first === undefined) return null
  const advice = sowingAdvice(sowable(reading, lots), policyOf(first, policy))
  return advice === null ? null : { ...advice, lots: advice.lots.map((lot) => ({ ...lot })) }
}

/** What to do with the last seeds of an accession; empty where the seed to sow makes a full regrowing. */
export function rescueOf(
  reading: Reading,
  lots: readonly LotRow[],
  policy: CollectionPolicy,
  sow: Sowing | null,
): RescueAdvice {
  const [first] = lots
  if (first === undefined || sow?.enough === true || !isKept(first.policy)) return NO_RESCUE
  const { plants, emergence } = policyOf(first, policy)
  const ofCrop = rescueCrop(reading.sqlite, first.accessionId)
  return adviseRescue({
    lots: sowable(reading, lots),
    sow,
    setAside: seedsSetAside(lots),
    plants,
    emergence,
    fewestPlants: plantsFor(populationOf(first), 'quality'),
    matingSystem: ofCrop.matingSystem,
    family: ofCrop.family,
    hardSeeded: ofCrop.hard === 1,
    unit: first.countedUnit,
    mayHaveIt: whoMayHaveIt(reading, lots, first.accessionId),
  })
}

function sowable(reading: Reading, lots: readonly LotRow[]): SowableLot[] {
  return lots.filter(countsTowardsKeeping).map((row) => {
    const { count, viability } = lifeOf(row)
    const { deviation } = beliefIn(row, reading.today)(0)
    return { lotId: row.lotId, lotNumber: row.lotNumber, seeds: count, viability, deviation }
  })
}

function whoMayHaveIt(reading: Reading, lots: readonly LotRow[], accessionId: number): Message[] {
  const people = peopleWithSeed(reading.sqlite, accessionId, addYears(reading.today, -PEOPLE_SINCE_YEARS))
  const elsewhere = lots.filter((lot) => lot.role === 'duplicate-elsewhere' && lot.balanceCount > 0)
  return [
    ...elsewhere.map(({ heldBy: name, lotNumber: lot }) =>
      name === '' ? message('needs.whoever-holds', { lot }) : message('needs.who-holds', { name, lot }),
    ),
    ...(people.donor === null ? [] : [message('needs.who-gave', { name: people.donor })]),
    ...people.members.map(({ name, last }) => message('needs.who-took', { name, on: { day: last } })),
  ]
}
