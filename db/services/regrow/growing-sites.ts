import { eq } from 'drizzle-orm'
import type { ParsedInput, Result } from '../../contract/contract.ts'
import { refuse } from '../../contract/refusal.ts'
import type { GrowingSite } from '../../contract/regeneration-operations.ts'
import { type Position, positionOf } from '../../domain/season-plan/position.ts'
import { reliabilityOf } from '../../domain/season-plan/worth.ts'
import { message } from '../../messages/message.ts'
import { canonicalPersonId } from '../../queries/person-records.ts'
import { growOutsOf, neighbourRows, type SiteRow, siteRows } from '../../queries/plan-rows.ts'
import { growingSite, siteNeighbour } from '../../schema/season-tables.ts'
import type { Reading, Writes, Writing } from '../book/context.ts'
import { cropOrRefuse } from '../book/crop-rows.ts'

export function listSites(reading: Reading): Result<'site.list'> {
  const rows = siteRows(reading.sqlite)
  const near = Map.groupBy(neighbourRows(reading.sqlite), ({ siteId }) => siteId)
  const round = rows.flatMap(({ latitude, longitude }) =>
    latitude === null || longitude === null ? [] : { latitude, longitude },
  )[0]
  return {
    sites: rows.map((row): GrowingSite => {
      const { took, back } =
        row.growerId === null ? { took: 0, back: 0 } : growOutsOf(reading.sqlite, row.growerId)
      return {
        siteId: row.siteId,
        name: row.name,
        growerId: row.growerId,
        grower: row.grower ?? '',
        areaM2: row.areaM2,
        mostVarieties: row.mostVarieties,
        seasonDays: row.seasonDays,
        takes: JSON.parse(row.takes),
        place: placeOf(row),
        note: row.note,
        neighbours: (near.get(row.siteId) ?? []).map(({ cropId, crop, metres }) => ({
          cropId,
          crop,
          metres,
        })),
        took,
        broughtBack: back,
        reliability: reliabilityOf(took, back),
        position: positionOfRow(row, round),
      }
    }),
  }
}

function placeOf(row: SiteRow): GrowingSite['place'] {
  if (row.latitude !== null && row.longitude !== null) {
    return { latitude: row.latitude, longitude: row.longitude }
  }
  return row.eastM === null || row.northM === null ? null : { eastM: row.eastM, northM: row.northM }
}

function positionOfRow(
  row: SiteRow,
  round: { latitude: number; longitude: number } | undefined,
): Position | null {
  const place = placeOf(row)
  if (place === null) return null
  if ('eastM' in place) return { east: place.eastM, north: place.northM }
  return round === undefined ? null : positionOf(place.latitude, place.longitude, round)
}

export const saveSite: Writes<'site.change'> = (writing, input) => {
  for (const cropId of input.takes) cropOrRefuse(writing, cropId, 'takes')
  refuseTwiceNear(writing, input)
  if (input.growerId !== null && canonicalPersonId(writing.sqlite, input.growerId) === undefined) {
    refuse('not-found', message('season.no-person'), { field: 'growerId' })
  }
  const { place } = input
  refuseMixedMaps(writing, input)
  const facts = {
    name: input.name,
    growerId: input.growerId,
    areaM2: input.areaM2,
    mostVarieties: input.mostVarieties,
    seasonDays: input.seasonDays,
    takes: JSON.stringify(input.takes),
    latitude: place !== null && 'latitude' in place ? place.latitude : null,
    longitude: place !== null && 'latitude' in place ? place.longitude : null,
    eastM: place !== null && 'eastM' in place ? place.eastM : null,
    northM: place !== null && 'eastM' in place ? place.northM : null,
    note: input.note,
    entryId: writing.entryId,
  }
  const siteId = input.siteId === null ? addSite(writing, facts) : changeSite(writing, input.siteId, facts)
  writing.db.delete(siteNeighbour).where(eq(siteNeighbour.siteId, siteId)).run()
  for (const { cropId, metres } of input.neighbours) {
    writing.db.insert(siteNeighbour).values({ siteId, cropId, metres }).run()
  }
  return { siteId, said: message('season.garden-kept', { garden: input.name }), undoable: false }
}

/** Metres on a sketch and degrees on the earth cannot be compared. */
function refuseMixedMaps(reading: Reading, input: ParsedInput<'site.change'>): void {
  const { place } = input
  if (place === null) return
  const other = siteRows(reading.sqlite).find((row) => {
    const theirs = placeOf(row)
    return row.siteId !== input.siteId && theirs !== null && 'latitude' in theirs !== 'latitude' in place
  })
  if (other !== undefined) {
    const theirs = 'latitude' in place ? 'sketch' : 'earth'
    refuse('garden-place-unfit', message('season.mixed-maps', { place: theirs, garden: other.name }), {
      field: 'place',
      todo: message('season.mixed-maps-todo'),
    })
  }
}

/** One crop has one distance: the nearest of its plants decides. */
function refuseTwiceNear(reading: Reading, { neighbours }: ParsedInput<'site.change'>): void {
  const seen = new Set<string>()
  for (const { cropId } of neighbours) {
    const { commonName } = cropOrRefuse(reading, cropId, 'neighbours')
    if (seen.has(cropId)) {
      refuse('named-twice', message('season.near-twice', { crop: commonName }), {
        field: 'neighbours',
        todo: message('season.near-twice-todo'),
      })
    }
    seen.add(cropId)
  }
}

type SiteColumns = Omit<typeof growingSite.$inferInsert, 'id'>

function addSite(writing: Writing, facts: SiteColumns): number {
  return writing.db.insert(growingSite).values(facts).returning({ id: growingSite.id }).get().id
}

function changeSite(writing: Writing, siteId: number, facts: SiteColumns): number {
  const changed = writing.db.update(growingSite).set(facts).where(eq(growingSite.id, siteId)).run()
  if (changed.changes === 0) refuse('not-found', message('season.garden-gone'), { field: 'siteId' })
  return siteId
}
