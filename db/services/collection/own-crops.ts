import { eq } from 'drizzle-orm'
import type { z } from 'zod'
import type { CropFields } from '../../contract/reference-operations.ts'
import { refuse } from '../../contract/refusal.ts'
import { CUTTING_WORDS } from '../../domain/amounts/unit-words.ts'
import { recountChange } from '../../domain/ledger/movement.ts'
import { fold } from '../../domain/shared/fold.ts'
import type { ViabilityConstants } from '../../domain/viability/constants.ts'
import {
  type HundredSeedWeight,
  hundredSeedWeightFromGrams,
} from '../../domain/weights/hundred-seed-weight.ts'
import { message } from '../../messages/message.ts'
import { unweighedLotsOfCrop } from '../../queries/lot-rows.ts'
import { crop } from '../../schema/reference-tables.ts'
import { balanceOf, cropWeight } from '../book/amounts.ts'
import { askOnce } from '../book/ask-once.ts'
import type { Reading, Writes, Writing } from '../book/context.ts'
import { cropOrRefuse } from '../book/crop-rows.ts'
import { writeMovement } from '../book/write-movement.ts'
import { type CropChange, changeCrop, OWN_CROP_FACTS } from './change-crop.ts'

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

/** Adds a crop of the keeper's own. Refuses a name that a crop has already. */
export const createCrop: Writes<'crop.create'> = (writing, input) => {
  refuseUnlessNew(writing, input.name, null, 'name')
  return {
    cropId: addCrop(writing, input),
    said: message('crop.added', { crop: input.name }),
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

/** Asks once about a name such as ‘rose cuttings’: there is nothing here that keeps them. */
function refuseUnlessNew(writing: Writing, name: string, butFor: string | null, field: string): void {
  if (fold(name) === '') {
    refuse('name-unfit', message('crop.no-letters', { name }), { field })
  }
  if (
    fold(name)
      .split(' ')
      .some((word) => CUTTING_WORDS.has(word))
  )
    askOnce(writing, `cuttings ${name}`, message('pieces.plants-outside'), field)
  const same = cropCalled(writing, name)
  if (same === undefined || same.id === butFor) return
  refuse('already-there', message('crop.there-already', { crop: same.commonName }), {
    field,
    todo: message('collection.tell-apart'),
  })
}

function addCrop(writing: Writing, facts: CropFacts): string {
  const { db, entryId } = writing
  const before = db.select({ id: crop.id }).from(crop).where(eq(crop.addedEntryId, entryId)).all().length
  const id = `own-${entryId}-${before + 1}`
  db.insert(crop)
    .values({
      id,
      ...columnsOf(facts, writing.say),
      commonName: facts.name,
      species: facts.species,
      family: facts.family,
      nameFolded: fold(facts.name),
      reference: NOTHING_KNOWN,
      ownReason: '',
      addedEntryId: entryId,
    })
    .run()
  return id
}

/** What was said of a crop, by the columns that keep it; what was not said is left out. */
function columnsOf(
  facts: { readonly [F in keyof CropFacts]?: CropFacts[F] | undefined },
  say: Writing['say'],
) {
  const { name, hundredSeedWeightG: grams, viabilityConstants: set, ...same } = facts
  return {
    ...same,
    commonName: name,
    hundredSeedWeightUg: grams && hundredSeedWeightFromGrams(grams),
    viabilityConstants: set && JSON.stringify(constantsSaid(set, say)),
  } satisfies CropChange
}

/** Constants that the keeper says: of no study, so that nobody knows on what they were fitted. */
function constantsSaid(
  set: NonNullable<CropFacts['viabilityConstants']>,
  say: Writing['say'],
): ViabilityConstants {
  return {
    name: say(message('crop.by-keeper')),
    ...set,
    fittedCelsius: null,
    fittedPercent: null,
    lowestPercent: null,
    source: say(message('crop.said-by-keeper')),
    confidence: 'from memory',
    note: '',
  }
}

/** Corrects a crop of the keeper's own, and recounts its unweighed lots where its weight changes. Refuses a shipped one. */
export const correctCrop: Writes<'crop.change'> = (writing, { cropId, correction }) => {
  const row = cropOrRefuse(writing, cropId, 'cropId')
  if (row.addedEntryId === null) {
    refuse('not-own-crop', message('crop.of-the-table', { crop: row.commonName }), {
      field: 'cropId',
      todo: message('crop.of-the-table-todo'),
    })
  }
  if (correction.name !== undefined) refuseUnlessNew(writing, correction.name, row.id, 'correction.name')
  const after = columnsOf(correction, writing.say)
  const changed = changeCrop(writing, row, after)
  if (changed.length === 0) return { said: message('crop.stays', { crop: row.commonName }), undoable: false }
  if (changed.includes('hundredSeedWeightUg'))
    recountLots(writing, cropId, cropWeight(after.hundredSeedWeightUg ?? null))
  const now = correction.name ?? row.commonName
  const told = changed.flatMap((field) =>
    field in OWN_CROP_FACTS
      ? [message(`crop.fact-${OWN_CROP_FACTS[field as keyof typeof OWN_CROP_FACTS]}`)]
      : [],
  )
  const corrected = { crop: now, facts: { list: told } }
  return {
    said:
      now === row.commonName
        ? message('crop.corrected', corrected)
        : message('crop.renamed', { ...corrected, before: row.commonName }),
    undoable: true,
  }
}

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
      note: writing.say(message('crop.weight-corrected', { crop: row.crop })),
    })
  }
}

/** Sets the keeper's own figures for any crop; null goes back to the table's. */
export const overrideCrop: Writes<'crop.change-policy'> = (writing, input) => {
  const row = cropOrRefuse(writing, input.cropId, 'cropId')
  const changed = changeCrop(writing, row, {
    ownPlants: input.plantsToKeep,
    ownThreshold: input.viabilityThreshold,
    ownDaysToSeed: input.daysToSeed,
    ownReason: input.reason,
  })
  return { said: message('crop.keeping-changed', { crop: row.commonName }), undoable: changed.length > 0 }
}
