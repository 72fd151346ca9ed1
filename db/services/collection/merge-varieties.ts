import { eq, inArray } from 'drizzle-orm'
import { refuse } from '../../contract/refusal.ts'
import { message } from '../../messages/message.ts'
import { notUndone } from '../../queries/measurements.ts'
import { prepared } from '../../queries/prepared.ts'
import { rowWith } from '../../queries/rows.ts'
import { indexVariety } from '../../queries/search-words.ts'
import { variety, varietyMerge, varietySynonym } from '../../schema/reference-tables.ts'
import type { Reading, Writes, Writing } from '../book/context.ts'
import { addName } from './varieties.ts'

/** Joins two records that turned out to be of one variety. What was printed and written stays as it is. */
export const mergeVarieties: Writes<'variety.merge'> = (writing, input) => {
  const { keepId, joinId } = input
  const { db, sqlite } = writing
  if (keepId === joinId) refuse('same-record', message('variety.one-already'), { field: 'joinId' })
  const kept = varietyOrRefuse(writing, keepId, 'keepId')
  const joined = varietyOrRefuse(writing, joinId, 'joinId')
  if (kept.cropId !== joined.cropId) {
    refuse('not-mergeable', message('variety.two-crops', { kept: kept.name, joined: joined.name }), {
      field: 'joinId',
      todo: message('variety.two-crops-todo'),
    })
  }
  const others = db.select().from(varietySynonym).where(eq(varietySynonym.varietyId, joinId)).all()
  const names = [joined.name, ...others.map(({ name }) => name)]
    .filter((name) => name !== kept.name)
    .flatMap((name) => addName(writing, keepId, name) ?? [])
  const accessions = prepared(sqlite, 'SELECT id FROM accession WHERE variety_id = ? ORDER BY id')
    .pluck()
    .all(joinId) as number[]
  move(writing, accessions, keepId)
  // Records that were joined into the one that is joined now follow it, so that one step always leads to the kept one.
  db.update(variety).set({ mergedIntoId: keepId }).where(eq(variety.mergedIntoId, joinId)).run()
  db.update(variety).set({ mergedIntoId: keepId }).where(eq(variety.id, joinId)).run()
  db.insert(varietyMerge)
    .values({
      keptId: keepId,
      joinedId: joinId,
      accessions: JSON.stringify(accessions),
      names: JSON.stringify(names),
      entryId: writing.entryId,
    })
    .run()
  indexVariety(sqlite, keepId)
  return {
    accessions: accessions.length,
    said: message('variety.joined', { joined: joined.name, kept: kept.name }),
    undoable: true,
  }
}

/** Parts varieties again that an entry joined. Refused where the kept one was joined into another since. */
export function restoreVarieties(writing: Writing, entryId: number): void {
  const { db, sqlite } = writing
  for (const join of db.select().from(varietyMerge).where(eq(varietyMerge.entryId, entryId)).all()) {
    const { keptId, joinedId } = join
    varietyOrRefuse(writing, keptId, 'entryId')
    const moved = JSON.parse(join.accessions) as number[]
    const still = prepared(sqlite, 'SELECT id FROM accession WHERE variety_id = ?').pluck().all(keptId)
    move(
      writing,
      moved.filter((id) => still.includes(id)),
      joinedId,
    )
    db.delete(varietySynonym)
      .where(inArray(varietySynonym.id, JSON.parse(join.names) as number[]))
      .run()
    db.update(variety).set({ mergedIntoId: null }).where(eq(variety.id, joinedId)).run()
    prepared(
      sqlite,
      `UPDATE variety SET merged_into_id = ?1 WHERE merged_into_id = ?2
       AND id IN (SELECT joined_id FROM variety_merge WHERE kept_id = ?1 AND ${notUndone('variety_merge')})`,
    ).run({ 1: joinedId, 2: keptId })
    indexVariety(sqlite, keptId)
    indexVariety(sqlite, joinedId)
  }
}

function move(writing: Writing, accessionIds: readonly number[], varietyId: number): void {
  const update = prepared(writing.sqlite, 'UPDATE accession SET variety_id = ? WHERE id = ?')
  for (const id of accessionIds) update.run(varietyId, id)
}

function varietyOrRefuse(reading: Reading, id: number, field: string) {
  const known = rowWith(reading.sqlite, variety, { id })
  if (known === undefined) return refuse('not-found', message('variety.not-in-book'), { field })
  if (known.mergedIntoId === null) return known
  const into = rowWith(reading.sqlite, variety, { id: known.mergedIntoId })?.name ?? ''
  return refuse(
    field === 'entryId' ? 'cannot-undo' : 'merged-already',
    message('variety.joined-already', { variety: known.name, into }),
    {
      field,
      todo: field === 'entryId' ? message('variety.undo-first') : message('variety.choose-instead', { into }),
    },
  )
}
