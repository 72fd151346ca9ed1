import type { ParsedInput, Result } from '../../contract/contract.ts'
import { refuse } from '../../contract/refusal.ts'
import { beyond } from '../../domain/climate/limits.ts'
import { isoDate } from '../../domain/dates/iso-date.ts'
import { type Inspection, looksFor, roundCautions } from '../../domain/rounds/inspection.ts'
import { roundDue } from '../../domain/rounds/round-due.ts'
import { type Message, message } from '../../messages/message.ts'
import { lotsInPlace } from '../../queries/place-readings.ts'
import {
  findingsOfRound,
  lastRounds,
  lotsClosedIn,
  lotsOfFinding,
  roundRows,
} from '../../queries/round-rows.ts'
import { roundCheck, roundCheckLot, storageRound } from '../../schema/climate-tables.ts'
import { changeLot } from '../book/change-lot.ts'
import type { Reading, Reads, Writes, Writing } from '../book/context.ts'
import { lotOrRefuse } from '../book/new-lot.ts'
import { placeOrRefuse } from '../book/places.ts'
import { StoredPlaces } from './place-climate.ts'
import { writeReading } from './place-readings.ts'
import { noteOf, noteOfReading } from './round-notes.ts'

type RoundStop = Result<'round.list-due'>['places'][number]

/** Of a place with more lots than this the rest is looked at, but not listed. */
const MOST_LOTS = 1_000

export function listDueRounds(reading: Reading): Result<'round.list-due'> {
  const places = new StoredPlaces(reading)
  const last = lastRounds(reading.sqlite)
  const closedIn = lotsClosedIn(reading.sqlite)
  const all = places.all()
  const idOf = new Map(all.map(({ path, placeId }) => [path, placeId]))
  const stops = all.flatMap(({ placeId, path }): RoundStop[] => {
    const round = places.roundOf(placeId)
    if (round === null || round.placeId !== placeId) return []
    const lots = lotsInPlace(reading.sqlite, placeId, MOST_LOTS).filter(
      ({ place }) => places.roundOf(idOf.get(place) ?? placeId)?.placeId === placeId,
    )
    const looks = looksFor({
      freezes: places.freezes(placeId),
      chills: places.chills(placeId),
      closedIn: lots.some(({ lotId }) => closedIn.has(lotId)),
    })
    const lastOn = last.get(placeId) ?? null
    return [
      {
        placeId,
        path,
        everyDays: round.everyDays,
        lastOn,
        due: roundDue(lastOn === null ? null : isoDate(lastOn), round.everyDays, reading.today),
        looks: looks.map((look) => ({
          look,
          name: message(`storage.look-${look}`),
          words: message(`storage.look-for-${look}`),
        })),
        lots: lots.map(({ family: _, highPercent: __, quarantined, ...lot }) => ({
          ...lot,
          quarantined: quarantined === 1,
        })),
      },
    ]
  })
  const missed = new Set(
    places
      .holdingSeed()
      .filter((placeId) => places.roundOf(placeId) === null)
      .map((placeId) => places.outermost(placeId)),
  )
  const unvisited = all.filter(({ placeId }) => missed.has(placeId))
  const looked = [...new Set(stops.flatMap(({ looks }) => looks.map(({ look }) => look)))]
  return {
    places: stops.toSorted((a, b) => (a.due.on < b.due.on ? -1 : a.due.on > b.due.on ? 1 : 0)),
    toWalk: stops.filter(({ due }) => due.when !== 'later').length,
    cautions: roundCautions(looked),
    unvisited: unvisited.map(({ placeId, path }) => ({ placeId, path })),
  }
}

type Walked = ParsedInput<'round.record'>
type Visit = Walked['places'][number]
type Check = Visit['checks'][number]

export const recordRound: Writes<'round.record'> = (writing, input) => {
  refuseTwice(input.places)
  const { id: roundId } = writing.db
    .insert(storageRound)
    .values({ onDate: input.on, walkedBy: input.walkedBy, entryId: writing.entryId })
    .returning({ id: storageRound.id })
    .get()
  const found: Message[] = []
  const quarantined = new Set<number>()
  for (const [index, visit] of input.places.entries()) {
    const field = `places.${index}.`
    const place = placeOrRefuse(writing, visit.placeId, `${field}placeId`)
    if (visit.checks.length === 0 && visit.reading === null) {
      refuse('words-missing', message('storage.round-nothing', { place: place.path }), {
        field: `${field}checks`,
        todo: message('storage.round-nothing-todo'),
      })
    }
    const there = new Set(lotsInPlace(writing.sqlite, place.id, -1).map(({ lotId }) => lotId))
    for (const [at, check] of visit.checks.entries()) {
      refuseHalfAFinding(check, `${field}checks.${at}.`)
      for (const [which, lotId] of check.lotIds.entries())
        refuseALotElsewhere(writing, lotId, there, place.path, `${field}checks.${at}.lotIds.${which}`)
      writeCheck(writing, { roundId, placeId: place.id, ...check })
      if (check.outcome === 'found') found.push(message(`storage.found-${check.look}`, { place: place.path }))
      if (!check.quarantine) continue
      for (const lotId of check.lotIds)
        if (putInQuarantine(writing, lotId, check.note)) quarantined.add(lotId)
    }
    if (visit.reading !== null && readOff(writing, roundId, visit, input.on, place, field))
      found.push(message('storage.found-reading', { place: place.path }))
  }
  return {
    found: found.length,
    quarantined: quarantined.size,
    said: roundSaid(input.places.length, found, quarantined.size),
    undoable: true,
  }
}

function roundSaid(places: number, found: readonly Message[], quarantined: number): Message {
  if (found.length === 0) return message('storage.round-all-well', { places })
  return message('storage.round-found', { places, found: { list: found }, quarantined })
}

function refuseTwice(places: readonly Visit[]): void {
  const twice = places.findIndex(
    ({ placeId }, index) => places.findIndex((other) => other.placeId === placeId) < index,
  )
  if (twice >= 0)
    refuse('named-twice', message('storage.round-place-twice'), { field: `places.${twice}.placeId` })
  for (const [index, { checks }] of places.entries()) {
    const again = checks.findIndex(({ look }, at) => checks.findIndex((other) => other.look === look) < at)
    if (again >= 0)
      refuse('named-twice', message('storage.round-look-twice'), {
        field: `places.${index}.checks.${again}.look`,
      })
  }
}

function refuseHalfAFinding({ outcome, note, lotIds, quarantine, look }: Check, field: string): void {
  if (outcome === 'fine' && (lotIds.length > 0 || quarantine)) {
    refuse('round-unfit', message('storage.round-well-with-lots'), {
      field: `${field}outcome`,
      todo: message('storage.round-well-with-lots-todo'),
    })
  }
  if (outcome === 'found' && note === '') {
    const told = message('storage.round-say-what', { look: message(`storage.look-for-${look}`) })
    refuse('words-missing', told, { field: `${field}note` })
  }
  if (quarantine && lotIds.length === 0) {
    refuse('round-unfit', message('storage.round-which-lots'), { field: `${field}lotIds` })
  }
}

function refuseALotElsewhere(
  reading: Reading,
  lotId: number,
  there: ReadonlySet<number>,
  path: string,
  field: string,
): void {
  const { lotNumber } = lotOrRefuse(reading, lotId, field)
  if (there.has(lotId)) return
  refuse('round-unfit', message('storage.round-lot-elsewhere', { lot: lotNumber, place: path }), {
    field,
    todo: message('storage.round-lot-elsewhere-todo'),
  })
}

/** A lot that is in quarantine already keeps the reason it is there for. */
function putInQuarantine(writing: Writing, lotId: number, reason: string): boolean {
  if (lotOrRefuse(writing, lotId, 'lotIds').quarantineReason !== null) return false
  changeLot(writing, lotId, { quarantineReason: reason })
  return true
}

function writeCheck(
  writing: Writing,
  row: {
    readonly roundId: number
    readonly placeId: number
    readonly look: Inspection
    readonly outcome: 'fine' | 'found'
    readonly note: string
    readonly lotIds: readonly number[]
  },
): void {
  const { roundId, placeId, look: lookedFor, outcome, note } = row
  const { id: checkId } = writing.db
    .insert(roundCheck)
    .values({ roundId, placeId, lookedFor, outcome, note })
    .returning({ id: roundCheck.id })
    .get()
  for (const lotId of new Set(row.lotIds)) writing.db.insert(roundCheckLot).values({ checkId, lotId }).run()
}

/** Writes what the instruments said, as a reading of the place too; answers whether it is beyond the limits. */
function readOff(
  writing: Writing,
  roundId: number,
  { placeId, reading }: Visit,
  on: string,
  place: { readonly id: number; readonly path: string },
  field: string,
): boolean {
  if (reading === null) return false
  const read = writeReading(writing, place, { ...reading, on }, `${field}reading.`)
  const note = noteOfReading(beyond(read, new StoredPlaces(writing).limits(placeId)))
  const outcome = note === '' ? 'fine' : 'found'
  writeCheck(writing, { roundId, placeId, look: 'reading', outcome, note, lotIds: [] })
  return outcome === 'found'
}

export const listRounds: Reads<'round.list'> = (reading, input) => {
  const { rows, total } = roundRows(reading.sqlite, input.placeId ?? null, input.limit, input.offset)
  return {
    rounds: rows.map((row) => ({
      entryId: row.entryId,
      on: row.on,
      walkedBy: row.walkedBy,
      places: row.places,
      findings: findingsOfRound(reading.sqlite, row.roundId).map((finding) => ({
        placeId: finding.placeId,
        path: finding.path,
        look: finding.look,
        name: message(`storage.look-${finding.look}`),
        note: noteOf(finding),
        lots: lotsOfFinding(reading.sqlite, finding.checkId),
      })),
    })),
    total,
  }
}
