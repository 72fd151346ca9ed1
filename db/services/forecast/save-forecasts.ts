import type { Result } from '../../contract/contract.ts'
import { addDays } from '../../domain/dates/day-arithmetic.ts'
import type { IsoDate } from '../../domain/dates/iso-date.ts'
import type { OpenCollection } from '../../migrations/open-file.ts'
import { countStale, madeStaleBy, saveForecast, staleLots } from '../../queries/forecast-rows.ts'
import type { Reading, Reads, Writing } from '../book/context.ts'
import { settingsOf } from '../book/settings.ts'
import { PlacesAgeing } from '../storage/place-ageing.ts'
import { forecastLots, type LotForecast } from './lot-forecast.ts'

/** A forecast older than so many days is recomputed: seed changes little in a month. */
const HOLDS_DAYS = 30
/** So many lots are computed with the entry that changed them; of a larger one the rest follow by themselves. */
const AT_ONCE = 20

/** Computes what the entry being written made stale, so that a keeper sees it at once. */
export function updateForecasts(writing: Writing): void {
  const lotIds = madeStaleBy(writing.sqlite, writing.entryId, AT_ONCE)
  if (lotIds.length > 0) saveForecasts(writing, lotIds)
}

/** The open collections whose forecasts somebody stopped: for as long as they are open. */
const heldCollections = new WeakSet<OpenCollection>()

/** Stops working out forecasts, or lets it go on. */
export const holdForecasts: Reads<'forecast.pause'> = (reading, { held }) => {
  if (held) heldCollections.add(reading.collection)
  else heldCollections.delete(reading.collection)
  return forecastsLeft(reading)
}

/** Computes some forecasts that no longer hold, unless that is stopped, and says how many are left. */
export const refreshForecasts: Reads<'forecast.refresh'> = (reading, input) => {
  if (heldCollections.has(reading.collection)) return { computed: 0, ...forecastsLeft(reading) }
  const lotIds = staleLots(reading.sqlite, oldest(reading), input.limit)
  if (lotIds.length > 0) reading.sqlite.transaction(() => saveForecasts(reading, lotIds)).immediate()
  return { computed: lotIds.length, ...forecastsLeft(reading) }
}

/** How many forecasts hold and how many are still to be computed. */
export function forecastsLeft(reading: Reading): Result<'forecast.get-progress'> {
  return { ...countStale(reading.sqlite, oldest(reading)), held: heldCollections.has(reading.collection) }
}

function oldest({ today }: Reading) {
  return { before: addDays(today, -HOLDS_DAYS), today }
}

function saveForecasts(reading: Reading, lotIds: readonly number[]): void {
  const places = new PlacesAgeing(reading)
  for (const computed of forecastLots(reading, lotIds, settingsOf(reading), places)) {
    saveForecast(reading.sqlite, {
      lotId: computed.lotId,
      computedOn: reading.today,
      ...figuresOf(computed, reading.today),
    })
  }
}

function figuresOf(computed: LotForecast, today: IsoDate) {
  if (computed.kind === 'refused' && computed.keptUntil !== undefined)
    return figuresOfPieces(computed.keptUntil, today)
  if (computed.kind === 'refused') {
    const none = {
      viability: null,
      viabilityLow: null,
      viabilityHigh: null,
      viabilityStart: null,
      chanceBelow: null,
      deviatesAYear: null,
    }
    return { basis: 'refused', ...none, crossesEarly: null, crossesOn: null, crossesLate: null } as const
  }
  const { start, today: now, crossing, chanceBelow, deviatesAYear } = computed.forecast
  return {
    basis: computed.model.basis,
    viability: now.middle,
    viabilityLow: now.low,
    viabilityHigh: now.high,
    viabilityStart: start.middle,
    chanceBelow,
    deviatesAYear,
    crossesEarly: crossing.early,
    crossesOn: crossing.middle,
    crossesLate: crossing.late,
  }
}

/** All of them until the season is over, then none: a rule of thumb. */
function figuresOfPieces(until: IsoDate, today: IsoDate) {
  const sound = today > until ? 0 : 1
  return {
    basis: 'rule-of-thumb',
    viability: sound,
    viabilityLow: sound,
    viabilityHigh: sound,
    viabilityStart: 1,
    chanceBelow: 1 - sound,
    deviatesAYear: 0,
    crossesEarly: null,
    crossesOn: until,
    crossesLate: null,
  } as const
}
