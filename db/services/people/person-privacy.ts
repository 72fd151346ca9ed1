import { eq, inArray } from 'drizzle-orm'
import { refuse } from '../../contract/refusal.ts'
import { fold } from '../../domain/shared/fold.ts'
import { message } from '../../messages/message.ts'
import { canonicalPersonId } from '../../queries/person-records.ts'
import { prepared } from '../../queries/prepared.ts'
import { recallRows } from '../../queries/recall-rows.ts'
import { accessionsSaying, forgetFormerWords, indexAccession } from '../../queries/search-words.ts'
import { person, personContact } from '../../schema/reference-tables.ts'
import type { Reading, Reads, Writes } from '../book/context.ts'
import { recallOrRefuse } from '../recall/recalls.ts'
import { takersOf } from '../recall/trace.ts'
import { whoIsSought } from './person-names.ts'
import { rewriteTexts, tracesOf } from './person-traces.ts'

/** Every record of a person: the kept one first, then those joined into it. */
function recordsOf(reading: Reading, asked: number): [number, ...number[]] {
  const kept = canonicalPersonId(reading.sqlite, asked)
  if (kept === undefined) refuse('not-found', message('people.not-found'), { field: 'personId' })
  const joined = prepared(reading.sqlite, 'SELECT id FROM person WHERE merged_into_id = ? ORDER BY id')
    .pluck()
    .all(kept) as number[]
  return [kept, ...joined]
}

/** Every column of the file that names a row of a table, whatever table it is in: one that comes later is not forgotten. */
function columnsNaming(reading: Reading, named: 'person' | 'withdrawal') {
  return prepared(
    reading.sqlite,
    `SELECT schema.name AS "table", key."from" AS "column"
     FROM sqlite_schema AS schema, pragma_foreign_key_list(schema.name) AS key
     WHERE schema.type = 'table' AND key."table" = ? ORDER BY 1, 2`,
  ).all(named) as { readonly table: string; readonly column: string }[]
}

/**
 * All that the file holds on a person, table by table as it is kept, with what belongs to their visits and the recalls of what
 * they have. What was answered to entries that they wrote is about the seed of others.
 */
export const exportPerson: Reads<'person.export'> = (reading, input) => {
  const ids = recordsOf(reading, input.personId)
  const held: Record<string, unknown> = {}
  const hold = (table: string, column: string, wanted: readonly number[]): Record<string, unknown>[] => {
    const rows = prepared(
      reading.sqlite,
      `SELECT * FROM "${table}" WHERE "${column}" IN (SELECT value FROM json_each(?))`,
    ).all(JSON.stringify(wanted)) as Record<string, unknown>[]
    const shown = rows.map(({ answer, ...row }) => row)
    if (shown.length > 0) held[table === 'person' ? table : `${table} by ${column}`] = shown
    return shown
  }
  hold('person', 'id', ids)
  const visits: number[] = []
  for (const { table, column } of columnsNaming(reading, 'person')) {
    if (table === 'person') continue
    const rows = hold(table, column, ids)
    if (table === 'withdrawal') visits.push(...rows.map(({ id }) => Number(id)))
  }
  for (const { table, column } of columnsNaming(reading, 'withdrawal')) hold(table, column, visits)
  hold('recall', 'id', recallsOf(reading, ids[0]))
  return {
    fileName: `person-${ids[0]}-${reading.today}.json`,
    text: `${JSON.stringify({ exportedOn: reading.today, held }, null, 2)}\n`,
  }
}

/** The recalls of seed that a kept person has some of. */
function recallsOf(reading: Reading, personId: number): number[] {
  return recallRows(reading.sqlite, null)
    .map(({ recallId }) => recallId)
    .filter((recallId) =>
      takersOf(reading, recallOrRefuse(reading, recallId).lots).some(({ who }) => who.personId === personId),
    )
}

/** Texts that may still speak of a person after erasing, for the keeper to decide before it. */
export const personTraces: Reads<'person.list-traces'> = (reading, input) => {
  return tracesOf(reading, whoIsSought(reading, recordsOf(reading, input.personId)))
}

/**
 * Takes out who a person was and leaves what they did: lots, quantities, dates and links stay, under a number.
 *
 * The one write that forgets on purpose: earlier values, contact, notes and what speaks of the person in any text are
 * gone from the file and cannot be taken back. Texts that may mean a plant stay unless asked for. Backups made before
 * still hold all of it.
 */
export const erasePerson: Writes<'person.erase'> = (writing, input) => {
  const ids = recordsOf(writing, input.personId)
  const instead = writing.say(message('people.former', { number: String(ids[0]).padStart(4, '0') }))
  const who = whoIsSought(writing, ids)
  const { db, sqlite } = writing
  const found = accessionsSaying(sqlite, who.words)
  for (const id of ids) {
    const blank = {
      name: instead,
      nameFolded: fold(instead),
      town: '',
      creditAs: '',
      note: '',
      language: '' as const,
    }
    db.update(person).set(blank).where(eq(person.id, id)).run()
    prepared(sqlite, "DELETE FROM person_change WHERE person_id = ? AND field <> 'mergedIntoId'").run(id)
  }
  prepared(sqlite, "UPDATE entry SET input_digest = '' WHERE id <> ?").run(writing.entryId)
  db.delete(personContact).where(inArray(personContact.personId, ids)).run()
  rewriteTexts(writing, who, instead, new Set(input.mask))
  for (const id of found) indexAccession(sqlite, id)
  forgetFormerWords(sqlite)
  const said = message('people.erased', { person: { person: ids[0] } })
  return { personId: ids[0], said, undoable: false }
}
