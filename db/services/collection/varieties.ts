import type { z } from 'zod'
import type { Result } from '../../contract/contract.ts'
import type { WhichVariety } from '../../contract/intake-operations.ts'
import { refuse } from '../../contract/refusal.ts'
import { fold } from '../../domain/shared/fold.ts'
import { message } from '../../messages/message.ts'
import { prepared } from '../../queries/prepared.ts'
import { insertRow, rowWith } from '../../queries/rows.ts'
import { indexVariety } from '../../queries/search-words.ts'
import { variety, varietySynonym } from '../../schema/reference-tables.ts'
import type { Reads, Writes, Writing } from '../book/context.ts'
import { cropOrRefuse } from '../book/crop-rows.ts'
import { cropNamed } from './own-crops.ts'

/** The variety that a gift is of, with its crop; a new one is added, unless the crop has one of that very name. */
export function varietyFor(writing: Writing, which: z.output<typeof WhichVariety>, field: string) {
  const id = 'newVariety' in which ? sameOrNew(writing, which.newVariety, field) : which.varietyId
  const known = rowWith(writing.sqlite, variety, { id: canonicalVariety(writing, id) })
  if (!known) refuse('not-found', message('variety.not-in-book-add'), { field })
  return { variety: known, crop: cropOrRefuse(writing, known.cropId, field) }
}

/** The variety that a record stands for: itself, or the one it was joined into. */
function canonicalVariety(writing: Writing, id: number): number {
  const known = rowWith(writing.sqlite, variety, { id })
  return known?.mergedIntoId ?? id
}

type NewVariety = Extract<z.output<typeof WhichVariety>, { newVariety: object }>['newVariety']

function sameOrNew(writing: Writing, which: NewVariety, field: string): number {
  const cropId =
    'newCrop' in which
      ? cropNamed(writing, which.newCrop, `${field}.newVariety.newCrop.name`)
      : cropOrRefuse(writing, which.cropId, `${field}.newVariety.cropId`).id
  const facts = { cropId, name: which.name }
  return sameVariety(writing, facts)?.id ?? addVariety(writing, { ...facts, story: '' })
}

/** The variety of a crop by that very name, accents and capitals too. */
function sameVariety(writing: Writing, { cropId, name }: { cropId: string; name: string }) {
  return rowWith(writing.sqlite, variety, { cropId, nameFolded: fold(name), name })
}

function addVariety(writing: Writing, facts: { cropId: string; name: string; story: string }): number {
  return insertRow(writing.sqlite, variety, { ...facts, nameFolded: fold(facts.name) })
}

/** Adds a variety of a crop. Refuses a name that the crop has already. */
export const createVariety: Writes<'variety.create'> = (writing, input) => {
  cropOrRefuse(writing, input.cropId, 'cropId')
  const same = sameVariety(writing, input)
  if (same) {
    refuse('already-there', message('variety.there-already', { variety: same.name }), {
      field: 'name',
      todo: message('collection.tell-apart'),
    })
  }
  const varietyId = addVariety(writing, input)
  for (const name of new Set(input.synonyms)) addName(writing, varietyId, name)
  return { varietyId, said: message('variety.added', { variety: input.name }), undoable: false }
}

/** Adds another name, and answers its id where the variety did not have it yet. */
export function addName(writing: Writing, varietyId: number, name: string): number | undefined {
  return writing.db
    .insert(varietySynonym)
    .values({ varietyId, name, nameFolded: fold(name) })
    .onConflictDoNothing()
    .returning({ id: varietySynonym.id })
    .get()?.id
}

/** Adds another name of a variety; one that it has already changes nothing. */
export const addSynonym: Writes<'variety.add-name'> = (writing, input) => {
  const known = rowWith(writing.sqlite, variety, { id: input.varietyId })
  if (!known) refuse('not-found', message('variety.not-in-book'), { field: 'varietyId' })
  addName(writing, known.id, input.name)
  indexVariety(writing.sqlite, known.id)
  return { said: message('variety.also-known', { variety: known.name, name: input.name }), undoable: false }
}

type VarietyLine = Result<'variety.search'>['varieties'][number]

/** Unit separator: cannot stand in a name, so that joined names come apart again. */
const BETWEEN_NAMES = '\u001f'

/** Varieties with a name that has a word beginning with the text; joined records are left out. */
export const searchVarieties: Reads<'variety.search'> = (reading, input) => {
  const wanted = fold(input.text)
  const rows = prepared(
    reading.sqlite,
    `WITH named AS (
       SELECT id, name, name_folded FROM variety WHERE merged_into_id IS NULL
       UNION ALL SELECT variety_id, name, name_folded FROM variety_synonym
     ), found AS (
       SELECT id, name AS matched, min(CASE WHEN name_folded LIKE ?1 || '%' THEN 0 ELSE 1 END) AS rank
       FROM named WHERE ' ' || name_folded LIKE '% ' || ?1 || '%' GROUP BY id
     )
     SELECT variety.id AS varietyId, variety.name, crop.id AS cropId, crop.common_name AS cropName,
       (SELECT group_concat(name, '${BETWEEN_NAMES}') FROM variety_synonym WHERE variety_id = variety.id) AS synonyms, found.matched,
       (SELECT count(*) FROM accession WHERE variety_id = variety.id) AS accessions
     FROM found JOIN variety ON variety.id = found.id JOIN crop ON crop.id = variety.crop_id
     WHERE variety.merged_into_id IS NULL AND (?2 IS NULL OR crop.id = ?2)
     ORDER BY found.rank, variety.name_folded, variety.id LIMIT ?3`,
  ).all({ 1: wanted, 2: input.cropId ?? null, 3: input.limit }) as (Omit<VarietyLine, 'synonyms'> & {
    synonyms: string | null
  })[]
  return {
    varieties: rows.map((row) => ({ ...row, synonyms: row.synonyms?.split(BETWEEN_NAMES) ?? [] })),
  }
}
