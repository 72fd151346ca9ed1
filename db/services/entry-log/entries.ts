import { eq } from 'drizzle-orm'
import type { Result } from '../../contract/contract.ts'
import { refuse } from '../../contract/refusal.ts'
import { overriddenTold } from '../../domain/ledger/overridden.ts'
import { type Message, message } from '../../messages/message.ts'
import { makeDerivedLotsStale } from '../../queries/forecast-rows.ts'
import { restingOnEntry } from '../../queries/germination-tests.ts'
import { restingOnPlan } from '../../queries/grow-out-rows.ts'
import { entryLines, movementsOf } from '../../queries/ledger.ts'
import { latestMeasurement } from '../../queries/measurements.ts'
import { prepared } from '../../queries/prepared.ts'
import { restingOnRecall } from '../../queries/recall-rows.ts'
import { rowWith } from '../../queries/rows.ts'
import { entry } from '../../schema/collection-tables.ts'
import { germinationResult } from '../../schema/germination-tables.ts'
import { lot, seedWeight } from '../../schema/stock-tables.ts'
import { restoreLots } from '../book/change-lot.ts'
import type { Reading, Reads, Writes, Writing } from '../book/context.ts'
import { reverseMovement } from '../book/reverse-movement.ts'
import { saidOf } from '../book/said.ts'
import { restoreCrops } from '../collection/change-crop.ts'
import { restoreVarieties } from '../collection/merge-varieties.ts'
import { putLatestResultInForce } from '../germination/germination.ts'
import { restorePeople } from '../people/change-person.ts'
import { restorePlaces } from '../storage/place-kind.ts'

interface ListedEntry
  extends Pick<
    Result<'entry.list'>['entries'][number],
    'entryId' | 'operation' | 'recordedAt' | 'by' | 'station'
  > {
  readonly said: string
  readonly answer: string
  readonly taken_back: number
}

/** What was written, newest first, with the lines of each entry in the ledger. */
export const listEntries: Reads<'entry.list'> = (reading, input) => {
  const rows = prepared(
    reading.sqlite,
    `SELECT id AS entryId, operation, recorded_at AS recordedAt, said, answer, station,
       coalesce((SELECT name FROM person WHERE person.id = entry.person_id), '') AS "by",
       EXISTS (SELECT 1 FROM entry AS back WHERE back.undoes_id = entry.id) AS taken_back
     FROM entry WHERE id < ? ORDER BY id DESC LIMIT ?`,
  ).all(input.before ?? Number.MAX_SAFE_INTEGER, input.limit) as ListedEntry[]
  return {
    entries: rows.map(({ answer, taken_back, ...row }) => ({
      ...row,
      said: saidOf(row.said),
      undoable: taken_back === 0 && JSON.parse(answer).undoable === true,
      takenBack: taken_back === 1,
      overridden: overriddenIn(reading, row.entryId),
      people: peopleOf(reading, row.entryId),
      lines: entryLines(reading.sqlite, row.entryId),
    })),
  }
}

/** One hand-out's: an entry has one, or a paper sheet of which every line says the same. */
function overriddenIn({ sqlite }: Reading, entryId: number): Message | string {
  const kept = prepared(
    sqlite,
    `SELECT DISTINCT overridden FROM movement JOIN withdrawal ON withdrawal.id = withdrawal_id
     WHERE movement.entry_id = ? AND overridden <> ''`,
  )
  return overriddenTold((kept.pluck().get(entryId) as string | undefined) ?? null)
}

/** Names are read, and never written into the sentence of an entry: a person can be renamed, joined or erased. */
function peopleOf({ sqlite }: Reading, entryId: number): string[] {
  const names = prepared(
    sqlite,
    `SELECT DISTINCT person.name FROM movement JOIN person ON person.id = person_id
     WHERE movement.entry_id = ? AND kind <> 'reversal' ORDER BY person.name`,
  )
  return names.pluck().all(entryId) as string[]
}

/**
 * Takes an entry back: the exact opposite of each of its movements, newest first, and whatever it put in force.
 *
 * Refused as a whole, having written nothing, when any one of its movements cannot be taken back.
 */
export const undoEntry: Writes<'entry.undo'> = (writing, input) => {
  const { db, sqlite } = writing
  const target = rowWith(sqlite, entry, { id: input.entryId })
  if (!target) refuse('not-found', message('entry.not-in-book'), { field: 'entryId' })
  const said = saidOf(target.said)
  if (target.id === writing.entryId || JSON.parse(target.answer).undoable !== true) {
    refuse('cannot-undo', message('entry.cannot-undo', { said }), {
      field: 'entryId',
    })
  }
  if (db.select({ id: entry.id }).from(entry).where(eq(entry.undoesId, target.id)).get()) {
    refuse('cannot-undo', message('entry.undone-already', { said }), { field: 'entryId' })
  }
  const resting =
    restingOnEntry(sqlite, target.id) ??
    restingOnPlan(sqlite, target.id) ??
    restingOnRecall(sqlite, target.id)
  if (resting !== undefined) {
    refuse('cannot-undo', message('entry.rested-on', { said: saidOf(resting) }), { field: 'entryId' })
  }
  db.update(entry).set({ undoesId: target.id }).where(eq(entry.id, writing.entryId)).run()
  makeDerivedLotsStale(sqlite, target.id, writing.entryId)
  for (const movement of movementsOf(sqlite, target.id).toReversed())
    reverseMovement(writing, movement, input.reason ?? '', 'entryId')
  putFormerInForce(writing, target.id)
  const lines = entryLines(sqlite, writing.entryId)
  return { lines, said: message('entry.undone', { said }), undoable: false }
}

/** Puts back what was in force before an entry: weights, results, and what else it changed of lots, people, places, varieties and crops. */
function putFormerInForce(writing: Writing, entryId: number): void {
  const { db, sqlite } = writing
  for (const { lotId } of db.select().from(seedWeight).where(eq(seedWeight.entryId, entryId)).all()) {
    const weightId = latestMeasurement(sqlite, 'seed_weight', lotId)
    db.update(lot).set({ weightId }).where(eq(lot.id, lotId)).run()
  }
  const tested = db.select().from(germinationResult).where(eq(germinationResult.entryId, entryId)).all()
  for (const { lotId } of tested) putLatestResultInForce(writing, lotId)
  restoreLots(writing, entryId)
  restorePeople(writing, entryId)
  restorePlaces(writing, entryId)
  restoreVarieties(writing, entryId)
  restoreCrops(writing, entryId)
}
