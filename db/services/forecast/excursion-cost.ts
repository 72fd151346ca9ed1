import { refuse } from '../../contract/refusal.ts'
import { excursionCostInWords } from '../../domain/climate/climate-words.ts'
import { addDays, daysBetween } from '../../domain/dates/day-arithmetic.ts'
import { viabilityBand } from '../../domain/viability/band.ts'
import { message } from '../../messages/message.ts'
import { stayRows } from '../../queries/forecast-rows.ts'
import { lotsInPlace } from '../../queries/place-readings.ts'
import type { Reads } from '../book/context.ts'
import { placeOrRefuse } from '../book/places.ts'
import { settingsOf } from '../book/settings.ts'
import { PlacesAgeing } from '../storage/place-ageing.ts'
import { forecastLots } from './lot-forecast.ts'

const MOST_LOTS = 500

/** What some days cost the lots that lay in a place then, beside what so many usual days of the place cost. */
export const excursionCost: Reads<'place.get-excursion-cost'> = (reading, { placeId, from, until }) => {
  const place = placeOrRefuse(reading, placeId, 'placeId')
  if (until < from) refuse('days-out-of-order', message('forecast.ends-before'), { field: 'until' })
  const ids = lotsInPlace(reading.sqlite, place.id, MOST_LOTS).map(({ lotId }) => lotId)
  const stays = Map.groupBy(stayRows(reading.sqlite, ids), (row) => row.lotId)
  const places = new PlacesAgeing(reading)
  const end = addDays(until, 1)
  const points = forecastLots(reading, ids, settingsOf(reading), places).flatMap((lot) => {
    if (lot.kind === 'refused') return []
    const own = stays.get(lot.lotId) ?? []
    const at = (id: number | undefined) => places.of(id ?? null, lot.crop, lot.model, lot.moisture)
    const then = own.findLast(({ since }) => since <= from)
    const there = at(own.at(-1)?.placeId)
    // A lot that moved from box to box inside the same freezer was there too.
    if (then === undefined || at(then.placeId) !== there || lot.ageing.start > from) return []
    const more = Math.max(0, there.lost(from, end) - there.daily * daysBetween(from, end))
    const lost = lot.ageing.lostOn(reading.today)
    const { posterior } = lot.forecast.learnt
    const alive = (of: number) => viabilityBand(posterior, of).middle
    return [100 * (alive(lost - more) - alive(lost))]
  })
  const sorted = points.toSorted((one, other) => one - other)
  const [least = 0, middle = 0, most = 0] = [sorted[0], sorted[(sorted.length - 1) >> 1], sorted.at(-1)]
  const cost = { lots: points.length, least, middle, most }
  return { ...cost, words: excursionCostInWords(cost) }
}
