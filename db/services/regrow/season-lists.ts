import { asc, desc, eq } from 'drizzle-orm'
import type { Result } from '../../contract/contract.ts'
import { refuse } from '../../contract/refusal.ts'
import type { SeasonListHead } from '../../contract/regeneration-operations.ts'
import type { CountedUnitName } from '../../domain/crops/counted-unit.ts'
import { toldUrgency } from '../../domain/needs/urgency.ts'
import { toldGrowOut } from '../../domain/season-plan/grow-out.ts'
import { isMessage, type Message, message } from '../../messages/message.ts'
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
    refuse('not-found', message('season.list-accession-gone'), {
      field: 'chosen',
      todo: message('season.list-accession-gone-todo'),
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
    const { state } = facts
    if (state === 'not-kept') {
      refuse('not-kept', message('keeping.not-on-list'), {
        field: 'chosen',
        todo: message('keeping.not-on-list-todo'),
      })
    }
    const lots = lotsOf.get(facts.accessionId) ?? []
    const { keep } = standingOf(lots, policy)
    writing.db
      .insert(seasonListLine)
      .values({
        listId: id,
        ordinal: index + 1,
        accessionId: facts.accessionId,
        chosen: chosen.has(facts.accessionId),
        state,
        living: facts.living,
        keep,
        cost: facts.cost,
        reason: JSON.stringify(toldUrgency(facts, lots[0]?.countedUnit ?? 'seed', season.year + 1)),
      })
      .run()
  }
  const said = message('season.saved-list', {
    year: String(season.year),
    chosen: chosen.size,
    all: listed.length,
  })
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
    refuse('not-found', message('season.list-gone'), { field: 'listId' })
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
          reason: storedReason(line.reason),
          stateNow: now.state,
          livingNow: now.living.about,
          became: becameOf(reading, line.accessionId, list.on, first.countedUnit),
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
  unit: CountedUnitName,
): Message[] {
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
  return [
    ...(out == null ? [] : [message('season.became-out', { seeds: { seeds: out, unit } })]),
    ...notedSince(reading, accessionId, since),
    ...back.map(({ number, seeds }) =>
      message('season.became-back', { seeds: { seeds, unit }, lot: number }),
    ),
  ]
}

/** Why an accession stood where it stood: a message, or in older lists its text. */
function storedReason(kept: string): Message | string {
  if (!kept.startsWith('{')) return kept
  const read: unknown = JSON.parse(kept)
  return isMessage(read) ? read : kept
}

function notedSince(reading: Reading, accessionId: number, since: string): Message[] {
  const notes = notesOfAccession(reading.sqlite, accessionId, since)
  return [...Map.groupBy(notes, (note) => note.growOutId).values()].map((ofOne) =>
    toldGrowOut(ofOne[0]?.site ?? '', { notes: ofOne }),
  )
}
