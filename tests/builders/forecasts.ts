import { readingOf } from '../../db/services/book/context.ts'
import { sealEntry } from '../../db/services/book/entry-chain.ts'
import { settingsOf } from '../../db/services/book/settings.ts'
import { forecastLots } from '../../db/services/forecast/lot-forecast.ts'
import { PlacesAgeing } from '../../db/services/storage/place-ageing.ts'
import { NOW, type TemporaryCollection, TODAY } from './temporary-collection.ts'

interface Kept {
  readonly stale_since: number | null
  readonly computed_on: string | null
  readonly basis: string | null
  readonly viability: number | null
  readonly viability_low: number | null
  readonly viability_high: number | null
  readonly crosses_on: string | null
}

/** The forecast as it is kept with the lot. */
export function kept(test: TemporaryCollection, lotId: number): Kept {
  return test.collection.sqlite.prepare('SELECT * FROM lot_forecast WHERE lot_id = ?').get(lotId) as Kept
}

/** The same forecast, worked out now from everything in the file. */
export function afresh(test: TemporaryCollection, lotId: number) {
  const reading = readingOf(test.collection, NOW)
  const [found] = forecastLots(reading, [lotId], settingsOf(reading), new PlacesAgeing(reading))
  if (found?.kind !== 'forecast') throw new Error(found?.because.id ?? 'No such lot')
  return found
}

let entries = 0
/** Writes rows as no operation would, under an entry of their own. */
export function write(test: TemporaryCollection, sql: (entryId: number) => string): number {
  const { sqlite } = test.collection
  entries += 1
  const { lastInsertRowid } = sqlite
    .prepare(
      "INSERT INTO entry (key, operation, input_digest, answer, said, recorded_at) VALUES (?, 'by-hand', '', '{\"undoable\":true}', 'by hand', '')",
    )
    .run(`forecast-entry-${entries}`)
  sqlite.exec(sql(Number(lastInsertRowid)))
  sealEntry(sqlite, Number(lastInsertRowid))
  return Number(lastInsertRowid)
}

/** Records a test whose seeds did not come out of the stock. */
export function germination(
  test: TemporaryCollection,
  lotId: number,
  tested: number,
  sprouted: number,
  on: string = TODAY,
) {
  return test.call('germination.record', { lotId, on, tested, sprouted, fromStock: false, itIsSo: [on] })
}

/** Two weeks of readings of a place, so warm and so damp, from the first of a month. */
export function readings(
  test: TemporaryCollection,
  placeId: number,
  celsius: number,
  percent: number,
  month = '2026-02',
): number {
  return write(test, (entryId) => {
    const batch = `INSERT INTO climate_batch VALUES (${entryId}, ${placeId}, NULL, NULL, 14, 0, '', ${entryId});`
    const days = Array.from({ length: 14 }, (_, day) => {
      const at = `${month}-${String(day + 1).padStart(2, '0')}T12:00`
      return `INSERT INTO climate_reading VALUES (${placeId}, '${at}', ${entryId}, ${100 * celsius}, ${10 * percent});`
    })
    return [batch, ...days].join('\n')
  })
}
