import type { RoundStop } from '../../contract/care-operations.ts'
import type { ParsedInput, Result } from '../../contract/contract.ts'
import { refuse } from '../../contract/refusal.ts'
import { beyond } from '../../domain/climate/limits.ts'
import { isoDate } from '../../domain/dates/iso-date.ts'
import {
  type Inspection,
  inspectionInWords,
  inspectionName,
  looksFor,
  roundCautions,
} from '../../domain/rounds/inspection.ts'
import { roundDue } from '../../domain/rounds/round-due.ts'
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
        looks: looks.map((look) => ({ look, name: inspectionName(look), words: inspectionInWords(look) })),
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
  const found: string[] = []
  const quarantined = new Set<number>()
  for (const [index, visit] of input.places.entries()) {
    const field = `places.${index}.`
    const place = placeOrRefuse(writing, visit.placeId, `${field}placeId`)
    if (visit.checks.length === 0 && visit.reading === null) {
      refuse('words-missing', `Nothing is written down of ${place.path}.`, {
        field: `${field}checks`,
        todo: 'Say what you looked at, or leave the place out.',
      })
    }
    const there = new Set(lotsInPlace(writing.sqlite, place.id, -1).map(({ lotId }) => lotId))
    for (const [at, check] of visit.checks.entries()) {
      refuseHalfAFinding(check, `${field}checks.${at}.`)
      for (const [which, lotId] of check.lotIds.entries())
        refuseALotElsewhere(writing, lotId, there, place.path, `${field}checks.${at}.lotIds.${which}`)
      writeCheck(writing, { roundId, placeId: place.id, ...check })
      if (check.outcome === 'found') found.push(`${inspectionName(check.look)} in ${place.path}`)
      if (!check.quarantine) continue
      const reason = `${inspectionName(check.look)}, found on the round of ${input.on}: ${check.note}`
      for (const lotId of check.lotIds) if (putInQuarantine(writing, lotId, reason)) quarantined.add(lotId)
    }
    if (visit.reading !== null && readOff(writing, roundId, visit, input.on, place, field))
      found.push(`readings beyond the limits in ${place.path}`)
  }
  return {
    found: found.length,
    quarantined: quarantined.size,
    said: roundSaid(input.places.length, found, quarantined.size),
    undoable: true,
  }
}

function roundSaid(places: number, found: readonly string[], quarantined: number): string {
  const walked = `Walked to ${places} ${places === 1 ? 'place' : 'places'}`
  if (found.length === 0) return `${walked}; all is well`
  const apart =
    quarantined === 0 ? '' : `; ${quarantined} ${quarantined === 1 ? 'lot' : 'lots'} in quarantine`
  return `${walked}; found ${found.join(', ')}${apart}`
}

function refuseTwice(places: readonly Visit[]): void {
  const twice = places.findIndex(
    ({ placeId }, index) => places.findIndex((other) => other.placeId === placeId) < index,
  )
  if (twice >= 0)
    refuse('named-twice', 'That place is in the round twice.', { field: `places.${twice}.placeId` })
  for (const [index, { checks }] of places.entries()) {
    const again = checks.findIndex(({ look }, at) => checks.findIndex((other) => other.look === look) < at)
    if (again >= 0)
      refuse('named-twice', 'That was looked at twice in one place.', {
        field: `places.${index}.checks.${again}.look`,
      })
  }
}

function refuseHalfAFinding({ outcome, note, lotIds, quarantine, look }: Check, field: string): void {
  if (outcome === 'fine' && (lotIds.length > 0 || quarantine)) {
    refuse('round-unfit', 'Where all is well no lot is concerned.', {
      field: `${field}outcome`,
      todo: 'Say that something was found, or name no lot.',
    })
  }
  if (outcome === 'found' && note === '') {
    refuse('words-missing', `Say what was found: ${inspectionInWords(look)}`, { field: `${field}note` })
  }
  if (quarantine && lotIds.length === 0) {
    refuse('round-unfit', 'Say which lots go into quarantine.', { field: `${field}lotIds` })
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
  refuse('round-unfit', `${lotNumber} does not lie in ${path}, or holds no seed.`, {
    field,
    todo: 'Name it in the place where it lies, or move it there first.',
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
  const { tooWarm, tooDamp } = beyond(read, new StoredPlaces(writing).limits(placeId))
  const note = [...(tooWarm ? ['too warm'] : []), ...(tooDamp ? ['too damp'] : [])].join(', ')
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
        name: inspectionName(finding.look),
        note: finding.note,
        lots: lotsOfFinding(reading.sqlite, finding.checkId),
      })),
    })),
    total,
  }
}
