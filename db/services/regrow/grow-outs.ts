import type { Result } from '../../contract/contract.ts'
import { refuse } from '../../contract/refusal.ts'
import type { GrowOutLine } from '../../contract/regeneration-operations.ts'
import type { Untold } from '../../contract/told.ts'
import { isBiennial } from '../../domain/crops/life-cycle.ts'
import { isoDate, yearOf } from '../../domain/dates/iso-date.ts'
import {
  type GrowOut,
  growOutState,
  harvestSeason,
  notesToCome,
  toldGrowOut,
  toldNote,
  whyNotNoted,
} from '../../domain/season-plan/grow-out.ts'
import { type Message, message } from '../../messages/message.ts'
import { type GrowOutRow, growOutRows, notesOf, seedBackOf, seedOutFor } from '../../queries/grow-out-rows.ts'
import { rowWith } from '../../queries/rows.ts'
import { growOut, growOutNote } from '../../schema/season-tables.ts'
import type { Reading, Writes } from '../book/context.ts'

/** A grow-out with all that was written of it. */
export interface KnownGrowOut {
  readonly row: GrowOutRow
  readonly facts: GrowOut
}

/** Grow-outs from a season on, the latest season first. */
export function growOutsSince(reading: Reading, season: number): KnownGrowOut[] {
  return growOutRows(reading.sqlite, season).map((row) => ({ row, facts: factsOf(reading, row) }))
}

function factsOf(reading: Reading, row: GrowOutRow): GrowOut {
  return {
    season: row.season,
    biennial: isBiennial(row.lifeCycle),
    seedOut: seedOutFor(reading.sqlite, row).length > 0,
    broughtBack: seedBackOf(reading.sqlite, 'grow_out', row.growOutId).length > 0,
    notes: notesOf(reading.sqlite, row.growOutId),
  }
}

export function listGrowOuts(reading: Reading): Result<'grow-out.list'> {
  return {
    growOuts: growOutsSince(reading, yearOf(reading.today) - 1).map(({ row }) => lineOf(reading, row)),
  }
}

function lineOf(reading: Reading, row: GrowOutRow): Untold<GrowOutLine> {
  const facts = factsOf(reading, row)
  const notes = notesOf(reading.sqlite, row.growOutId)
  return {
    growOutId: row.growOutId,
    season: row.season,
    harvestSeason: harvestSeason(facts),
    accessionId: row.accessionId,
    accessionNumber: row.accessionNumber,
    variety: row.variety,
    crop: row.crop,
    siteId: row.siteId,
    site: row.site,
    growerId: row.growerId,
    grower: row.grower ?? '',
    biennial: facts.biennial,
    state: growOutState(facts, reading.today),
    out: seedOutFor(reading.sqlite, row).map(({ count, ...lot }) => ({
      ...lot,
      words: message('amount.seeds', { count, unit: row.countedUnit }),
    })),
    notes: notes.map((note) => ({
      entryId: note.entryId,
      kind: note.kind,
      on: note.on,
      plants: note.plants,
      note: note.note,
      words: toldNote(note),
    })),
    next: [...notesToCome(facts)],
    plantsSavedFrom: notes.find(({ kind }) => kind === 'saved-from')?.plants ?? null,
    back: seedBackOf(reading.sqlite, 'grow_out', row.growOutId),
  }
}

/** The grow-out that an operation names, or a refusal. */
export function growOutOrRefuse(reading: Reading, growOutId: number): GrowOutRow {
  const kept = rowWith(reading.sqlite, growOut, { id: growOutId })
  const row = kept && growOutRows(reading.sqlite, kept.season).find((one) => one.growOutId === growOutId)
  return (
    row ??
    refuse('not-found', message('season.no-grow-out'), {
      field: 'growOutId',
      todo: message('season.no-grow-out-todo'),
    })
  )
}

export const noteGrowOut: Writes<'grow-out.record'> = (writing, input) => {
  const row = growOutOrRefuse(writing, input.growOutId)
  const { kind, plants, note } = input
  const noted = { kind, on: isoDate(input.on), plants, note }
  const why = whyNotNoted(factsOf(writing, row), noted)
  if (why !== null) {
    refuse('season-note-unfit', why, {
      field:
        kind === 'failed' && note === ''
          ? 'note'
          : kind === 'saved-from' && plants === null
            ? 'plants'
            : 'on',
      todo: message('season.nothing-noted'),
    })
  }
  writing.db
    .insert(growOutNote)
    .values({ growOutId: row.growOutId, kind, onDate: input.on, plants, note, entryId: writing.entryId })
    .run()
  const { variety, site: garden } = row
  const said = message('season.noted-at', { variety, garden, note: toldNote(noted) })
  return { growOut: lineOf(writing, row), said, undoable: true }
}

interface Grown {
  readonly failed: boolean
  readonly words: Message
}

/** What is being grown now, or failed of late, in words, by accession; the latest grow-out of each. */
export function growingNow(reading: Reading, season: number): ReadonlyMap<number, Grown> {
  const begun = growOutsSince(reading, season - 2)
    .map(({ row, facts }) => ({ row, facts, state: growOutState(facts, reading.today) }))
    .filter(({ state }) => state !== 'planned')
  const now = new Map<number, Grown>()
  for (const [accessionId, all] of Map.groupBy(begun, ({ row }) => row.accessionId)) {
    const latest = all.filter(({ row }) => row.season === all[0]?.row.season)
    if (latest.some(({ state }) => state === 'brought-back')) continue
    const growing = latest.find(({ state }) => state === 'seed-out' || state === 'growing')
    const failed = latest.find(({ row, state }) => state === 'failed' && row.season >= season - 1)
    const shown = growing ?? failed
    if (shown === undefined) continue
    now.set(accessionId, {
      failed: growing === undefined,
      words: toldGrowOut(shown.row.site, shown.facts),
    })
  }
  return now
}
