import { eq } from 'drizzle-orm'
import type { z } from 'zod'
import type { ParsedInput, Value } from '../../contract/contract.ts'
import type { CropFields } from '../../contract/reference-operations.ts'
import { refuse } from '../../contract/refusal.ts'
import { recountChange } from '../../domain/ledger/movement.ts'
import { fold } from '../../domain/shared/fold.ts'
import {
  type HundredSeedWeight,
  hundredSeedWeightFromGrams,
} from '../../domain/weights/hundred-seed-weight.ts'
import { unweighedLotsOfCrop } from '../../queries/lot-rows.ts'
import { crop } from '../../schema/reference-tables.ts'
import { balanceOf, cropWeight } from '../book/amounts.ts'
import type { Reading, Writing } from '../book/context.ts'
import { cropOrRefuse } from '../book/crop-rows.ts'
import { writeMovement } from '../book/write-movement.ts'
import { type CropState, changeCrop } from './change-crop.ts'

type CropFacts = z.output<z.ZodObject<typeof CropFields>>

/** The cells of the shipped table that are read one by one, all of them unknown. */
const NOTHING_KNOWN = JSON.stringify({
  germ_temp_c: null,
  germ_substrata: null,
  germ_first_count_day: null,
  germ_final_count_day: null,
  germ_hard_seed_possible: null,
  germ_notes: null,
  notes: null,
  sources: { germination: null },
})

export function createCrop(
  writing: Writing,
  input: ParsedInput<'crop.create'>,
): Omit<Value<'crop.create'>, 'entryId'> {
  refuseUnlessNew(writing, input.name, null, 'name')
  return {
    cropId: addCrop(writing, input),
    said: `Added ${input.name} as a crop of your own`,
    undoable: false,
  }
}

/** The id of the crop of that very name, added as one of the keeper's own where there is none. */
export function cropNamed(writing: Writing, facts: CropFacts, field: string): string {
  const same = cropCalled(writing, facts.name)
  if (same !== undefined) return same.id
  refuseUnlessNew(writing, facts.name, null, field)
  return addCrop(writing, facts)
}

/** The crop whose name is the same but for accents, capitals and signs. */
function cropCalled(reading: Reading, name: string) {
  return reading.db
    .select()
    .from(crop)
    .where(eq(crop.nameFolded, fold(name)))
    .get()
}

function refuseUnlessNew(reading: Reading, name: string, butFor: string | null, field: string): void {
  if (fold(name) === '') {
    refuse('name-unfit', `‘${name}’ has no letters in it. Type what people call the crop.`, { field })
  }
  const same = cropCalled(reading, name)
  if (same === undefined || same.id === butFor) return
  refuse('already-there', `There is a crop called ${same.commonName} already.`, {
    field,
    todo: 'Use that one, or add what tells this one apart to its name.',
  })
}

function addCrop(writing: Writing, facts: CropFacts): string {
  const { db, entryId } = writing
  const before = db.select({ id: crop.id }).from(crop).where(eq(crop.addedEntryId, entryId)).all().length
  const id = `own-${entryId}-${before + 1}`
  const said = { ...namesOf(facts), packetSeeds: facts.packetSeeds, hundredSeedWeightUg: weightOf(facts) }
  db.insert(crop)
    .values({
      id,
      ...said,
      nameFolded: fold(facts.name),
      reference: NOTHING_KNOWN,
      ownReason: '',
      addedEntryId: entryId,
    })
    .run()
  return id
}

const namesOf = ({ name, species, family }: CropFacts) => ({ commonName: name, species, family })

function weightOf({ hundredSeedWeightG }: Pick<CropFacts, 'hundredSeedWeightG'>): HundredSeedWeight | null {
  return hundredSeedWeightG === null ? null : hundredSeedWeightFromGrams(hundredSeedWeightG)
}

export function correctCrop(
  writing: Writing,
  { cropId, correction }: ParsedInput<'crop.change'>,
): Omit<Value<'crop.change'>, 'entryId'> {
  const row = cropOrRefuse(writing, cropId, 'cropId')
  if (row.addedEntryId === null) {
    refuse('not-own-crop', `${row.commonName} is of the crop table, whose figures have their sources.`, {
      field: 'cropId',
      todo: 'Set your own plants or threshold for it instead.',
    })
  }
  if (correction.name !== undefined) refuseUnlessNew(writing, correction.name, row.id, 'correction.name')
  const after: Partial<CropState> = {
    ...(correction.name === undefined ? {} : { commonName: correction.name }),
    ...(correction.species === undefined ? {} : { species: correction.species }),
    ...(correction.family === undefined ? {} : { family: correction.family }),
    ...(correction.packetSeeds === undefined ? {} : { packetSeeds: correction.packetSeeds }),
    ...(correction.hundredSeedWeightG === undefined
      ? {}
      : { hundredSeedWeightUg: weightOf({ hundredSeedWeightG: correction.hundredSeedWeightG }) }),
  }
  const changed = changeCrop(writing, row, after)
  if (changed.length === 0) return { said: `${row.commonName} stays as it was`, undoable: false }
  if (changed.includes('hundredSeedWeightUg'))
    recountLots(writing, cropId, cropWeight(after.hundredSeedWeightUg ?? null))
  const now = correction.name ?? row.commonName
  const renamed = now === row.commonName ? '' : `, before ${row.commonName}`
  const told = changed.flatMap((field) =>
    field in FIELD_WORDS ? [FIELD_WORDS[field as CorrectedField]] : [],
  )
  return { said: `Corrected ${now}${renamed}: ${told.join(', ')}`, undoable: true }
}

type CorrectedField = keyof typeof FIELD_WORDS
const FIELD_WORDS = {
  commonName: 'name',
  species: 'botanical name',
  family: 'family',
  packetSeeds: 'usual packet',
  hundredSeedWeightUg: 'weight of a hundred seeds',
} as const

/** Computes the derived number of every lot anew that goes by the weight of its crop. */
function recountLots(writing: Writing, cropId: string, weight: HundredSeedWeight): void {
  for (const row of unweighedLotsOfCrop(writing.sqlite, cropId)) {
    const change = recountChange(balanceOf(row), row.basis, weight)
    if (change.count === 0 && change.mass === 0) continue
    writeMovement(writing, {
      lotId: row.lotId,
      kind: 'recount',
      on: writing.today,
      change,
      measured: row.basis === 'weighed' ? 'mass' : 'count',
      weight,
      note: `the weight of ${row.crop} was corrected`,
    })
  }
}

export function overrideCrop(
  writing: Writing,
  input: ParsedInput<'crop.change-policy'>,
): Omit<Value<'crop.change-policy'>, 'entryId'> {
  const row = cropOrRefuse(writing, input.cropId, 'cropId')
  const { plantsToKeep, viabilityThreshold, daysToSeed, reason } = input
  const changed = changeCrop(writing, row, {
    ...(plantsToKeep === undefined ? {} : { ownPlants: plantsToKeep }),
    ...(viabilityThreshold === undefined ? {} : { ownThreshold: viabilityThreshold }),
    ...(daysToSeed === undefined ? {} : { ownDaysToSeed: daysToSeed }),
    ownReason: reason,
  })
  return { said: `Changed what ${row.commonName} has to keep`, undoable: changed.length > 0 }
}
