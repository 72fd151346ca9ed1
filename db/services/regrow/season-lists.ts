import { asc, desc, eq } from 'drizzle-orm'
import type { Result } from '../../contract/contract.ts'
import { refuse } from '../../contract/refusal.ts'
import type { SeasonListHead } from '../../contract/regeneration-operations.ts'
import { countInWords } from '../../domain/amounts/in-words.ts'
import { countedUnit } from '../../domain/crops/counted-unit.ts'
import { urgencyInWords } from '../../domain/needs/urgency.ts'
import { growOutInWords } from '../../domain/season-plan/grow-out.ts'
import { columns, expression, pick, select, selectValue } from '../../queries/columns.ts'
import { notesOfAccession } from '../../queries/grow-out-rows.ts'
import { lotsOfAccessions } from '../../queries/lot-rows.ts'
import { notUndone } from '../../queries/measurements.ts'
import { seasonList, seasonListLine } from '../../schema/season-tables.ts'
import { lot } from '../../schema/stock-tables.ts'
import type { Reading, Reads, Writes } from '../book/context.ts'
import { standingOf } from '../book/living-stock.ts'
import { settingsOf } from '../book/settings.ts'
import { rankNeeds } from './regrow-needs.ts'

/** Saves every accession that is in need or was chosen, in the order of urgency, as it stands today. */
export const saveSeasonList: Writes<'season-list.create'> = (writing, input) => {
  const { season, policy, ranked } = rankNeeds(writing)
  const chosen = new Set(input.chosen)
  const listed = ranked.filter(
    ({ accessionId, state }) => state === 'rescue' || state === 'regrow' || chosen.has(accessionId),
  )
  if (listed.filter(({ accessionId }) => chosen.has(accessionId)).length < chosen.size) {
    refuse('not-found', 'One of the chosen accessions is not in the book.', {
      field: 'chosen',
      todo: 'Open the list again and choose anew.',
    })
  }
  const lotsOf = Map.groupBy(
    lotsOfAccessions(
      writing.sqlite,
      listed.map(({ accessionId }) => accessionId),
    ),
    (row) => row.accessionId,
  )
  const { id } = writing.db
    .insert(seasonList)
    .values({
      season: season.year,
      onDate: writing.today,
      grade: policy.grade,
      note: input.note,
      entryId: writing.entryId,
    })
    .returning({ id: seasonList.id })
    .get()
  for (const [index, facts] of listed.entries()) {
    const lots = lotsOf.get(facts.accessionId) ?? []
    const { keep } = standingOf(lots, policy)
    writing.db
      .insert(seasonListLine)
      .values({
        listId: id,
        ordinal: index + 1,
        accessionId: facts.accessionId,
        chosen: chosen.has(facts.accessionId),
        state: facts.state,
        living: facts.living,
        keep,
        cost: facts.cost,
        reason: urgencyInWords(facts, countedUnit(lots[0]?.countedUnit ?? 'seed'), season.year + 1, policy),
      })
      .run()
  }
  const said = `Saved the list of season ${season.year}: ${chosen.size} of ${listed.length} to be grown`
  return { listId: id, said, undoable: true }
}

const HEAD = columns({
  listId: seasonList.id,
  ...pick(seasonList, 'season', 'grade', 'note'),
  on: seasonList.onDate,
  accessions: expression<number>('count(*)'),
  chosen: expression<number>('sum(chosen)'),
})

function heads(reading: Reading, where: string, ...values: unknown[]): SeasonListHead[] {
  return select(
    reading.sqlite,
    HEAD,
    (list) => `SELECT ${list} FROM season_list JOIN season_list_line ON list_id = season_list.id
     WHERE ${where} AND ${notUndone('season_list')} GROUP BY season_list.id ORDER BY on_date DESC, season_list.id DESC`,
  ).all(...values)
}

export function listSeasonLists(reading: Reading): Result<'season-list.list'> {
  return { lists: heads(reading, 'TRUE') }
}

export const getSeasonList: Reads<'season-list.get'> = (reading, input) => {
  const list = heads(reading, 'season_list.id = ?', input.listId)[0]
  if (list === undefined) {
    refuse('not-found', 'That season list is not in the book, or was taken back.', { field: 'listId' })
  }
  const lines = reading.db
    .select()
    .from(seasonListLine)
    .where(eq(seasonListLine.listId, list.listId))
    .orderBy(desc(seasonListLine.chosen), asc(seasonListLine.ordinal))
    .all()
  const policy = settingsOf(reading)
  const lotsOf = Map.groupBy(
    lotsOfAccessions(
      reading.sqlite,
      lines.map(({ accessionId }) => accessionId),
    ),
    (row) => row.accessionId,
  )
  return {
    list,
    lines: lines.flatMap((line) => {
      const lots = lotsOf.get(line.accessionId) ?? []
      return lots.slice(0, 1).map((first) => {
        const now = standingOf(lots, policy)
        return {
          accessionId: line.accessionId,
          accessionNumber: first.accessionNumber,
          variety: first.variety,
          crop: first.crop,
          chosen: line.chosen,
          stateThen: line.state,
          livingThen: line.living,
          keepThen: line.keep,
          costThen: line.cost,
          reason: line.reason,
          stateNow: now.state,
          livingNow: now.living.about,
          became: becameOf(reading, line.accessionId, list.on, countedUnit(first.countedUnit)),
        }
      })
    }),
  }
}

const BACK = columns({ number: lot.number, seeds: expression<number>('coalesce(sum(movement.count), 0)') })

/** What went out to be grown, what was noted of it and what came back of an accession since a day. */
export function becameOf(
  reading: Reading,
  accessionId: number,
  since: string,
  unit: Parameters<typeof countInWords>[1],
): string {
  const out = selectValue(
    reading.sqlite,
    expression<number | null>('-sum(movement.count)'),
    (sum) => `SELECT ${sum} FROM movement JOIN lot ON lot.id = movement.lot_id
     JOIN withdrawal ON withdrawal.id = movement.withdrawal_id
     WHERE lot.accession_id = ? AND withdrawal.on_date >= ? AND purpose IN ('grow-out', 'to-return')
       AND movement.kind = 'withdrawal' AND ${notUndone('withdrawal')}`,
  ).get(accessionId, since)
  const back = select(
    reading.sqlite,
    BACK,
    (list) => `SELECT ${list} FROM lot
     JOIN seed_return ON seed_return.lot_id = lot.id
     JOIN movement ON movement.lot_id = lot.id AND movement.kind = 'return'
     WHERE lot.accession_id = ? AND seed_return.on_date >= ? AND ${notUndone('seed_return')} GROUP BY lot.id`,
  ).all(accessionId, since)
  const manner = settingsOf(reading)
  const parts = [
    ...(out == null ? [] : [`${countInWords(out, unit, manner)} went out to be grown`]),
    ...notedSince(reading, accessionId, since),
    ...back.map(({ number, seeds }) => `${countInWords(seeds, unit, manner)} came back as ${number}`),
  ]
  return parts.length === 0 ? 'nothing went out to be grown' : parts.join('; ')
}

function notedSince(reading: Reading, accessionId: number, since: string): string[] {
  const notes = notesOfAccession(reading.sqlite, accessionId, since)
  return [...Map.groupBy(notes, (note) => note.growOutId).values()].map((ofOne) =>
    growOutInWords(ofOne[0]?.site ?? '', { notes: ofOne }),
  )
}
