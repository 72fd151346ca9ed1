import type { ParsedInput, Result } from '../../contract/contract.ts'
import type { ClimateDay, ClimateSum } from '../../contract/storage-operations.ts'
import { climateTotals } from '../../domain/climate/climate-sum.ts'
import { limitsInWords, thawsInWords, totalsInWords } from '../../domain/climate/climate-words.ts'
import { type ClimateLimits, hasLimits, limitsOf, type PlaceAim } from '../../domain/climate/limits.ts'
import { JUDGED_OVER_DAYS, placeState, stateInWords } from '../../domain/climate/place-state.ts'
import { type ClimateReading, dayOf } from '../../domain/climate/reading.ts'
import { thawCycles } from '../../domain/climate/thaw-cycles.ts'
import { timeOutside } from '../../domain/climate/time-outside.ts'
import { addDays, daysBetween } from '../../domain/dates/day-arithmetic.ts'
import { type ClimateSummary, climateOfPlace } from '../../queries/lot-climate.ts'
import {
  batchesOfPlace,
  latestReadings,
  lotsInPlace,
  readingsOfPlace,
  type TermsRow,
  termsOfPlaces,
} from '../../queries/place-readings.ts'
import type { Reading } from '../book/context.ts'
import { listPlaces, placeOrRefuse } from '../book/places.ts'
import { storageCaution } from './lot-storage.ts'

type PlaceClimate = Result<'storage.get'>
type StoredPlace = PlaceClimate['place']

const MOST_LOTS = 300
const MOST_BATCHES = 30
const MOST_SPELLS = 5
/** A trace of more days than this is drawn by months. */
const MOST_DAYS_DRAWN = 400

/** The places with what holds for each of them, from the place itself or from the nearest around it. */
export class StoredPlaces {
  readonly #reading: Reading
  readonly #lines: ReadonlyMap<number, Result<'place.list'>['places'][number]>
  readonly #terms: ReadonlyMap<number, TermsRow>
  readonly #latest: ReadonlyMap<number, string>
  readonly #recent = new Map<number, readonly ClimateReading[]>()

  constructor(reading: Reading) {
    this.#reading = reading
    this.#lines = new Map(listPlaces(reading).places.map((line) => [line.placeId, line]))
    this.#terms = new Map(termsOfPlaces(reading.sqlite).map((row) => [row.placeId, row]))
    this.#latest = new Map(latestReadings(reading.sqlite).map(({ placeId, at }) => [placeId, at]))
  }

  /** Every place, in order of their paths. */
  all(): StoredPlace[] {
    const lots = this.#lotsInside()
    return [...this.#lines.keys()].map((placeId) => this.#stored(placeId, lots.get(placeId) ?? 0))
  }

  /** One place; it must be there. */
  one(placeId: number): StoredPlace {
    return this.#stored(placeId, this.#lotsInside().get(placeId) ?? 0)
  }

  /** The places in which lots with seed lie, not counting what lies in places inside them. */
  holdingSeed(): number[] {
    return [...this.#lines.values()].filter(({ lots }) => lots > 0).map(({ placeId }) => placeId)
  }

  /** The place that a place stands in and that itself stands in none: it may be the place itself. */
  outermost(placeId: number): number {
    return this.#around(placeId).at(-1) ?? placeId
  }

  ownTerms(placeId: number): TermsRow | null {
    return this.#terms.get(placeId) ?? null
  }

  limits(placeId: number): ClimateLimits {
    const terms = this.#around(placeId).find((id) => this.#terms.has(id))
    const row = terms === undefined ? undefined : this.#terms.get(terms)
    return limitsOf(row?.aim ?? 'none', {
      highestCc: row?.highestCc ?? null,
      highestPm: row?.highestPm ?? null,
    })
  }

  aim(placeId: number): PlaceAim {
    const terms = this.#around(placeId).find((id) => this.#terms.has(id))
    return terms === undefined ? 'none' : (this.#terms.get(terms)?.aim ?? 'none')
  }

  /** Whether a place is a freezer or stands in one. */
  freezes(placeId: number): boolean {
    return this.#around(placeId).some((id) => this.#lines.get(id)?.kind === 'freezer')
  }

  /** Whether a place is a fridge or stands in one. */
  chills(placeId: number): boolean {
    return this.#around(placeId).some((id) => this.#lines.get(id)?.kind === 'fridge')
  }

  /** What such a place is usually meant for. */
  suggestedAim(placeId: number): PlaceAim {
    if (this.freezes(placeId)) return 'long-term'
    return this.chills(placeId) ? 'medium-term' : 'short-term'
  }

  /** The place itself or the nearest around it that a round goes to, with its rhythm in days; null: none does. */
  roundOf(placeId: number): { readonly placeId: number; readonly everyDays: number } | null {
    for (const id of this.#around(placeId)) {
      const everyDays = this.#terms.get(id)?.roundDays ?? null
      if (everyDays !== null) return { placeId: id, everyDays }
    }
    return null
  }

  #stored(placeId: number, lots: number): StoredPlace {
    const line = this.#lines.get(placeId)
    if (line === undefined) throw new Error(`No place ${placeId}`)
    const source = this.#sharingAir(placeId).find((id) => this.#latest.has(id))
    const latest = source === undefined ? null : (this.#latest.get(source) ?? null)
    const limits = this.limits(placeId)
    const recent = source === undefined ? [] : this.#recentOf(source)
    const latestOn = latest === null ? null : dayOf(latest)
    const state = placeState(recent, limits, latestOn, this.#reading.today)
    return {
      ...line,
      lots,
      aim: this.aim(placeId),
      readingsFrom:
        source === undefined ? null : { placeId: source, path: this.#lines.get(source)?.path ?? '' },
      latest,
      state,
      stateWords: stateInWords(state, limits, latestOn),
    }
  }

  #recentOf(placeId: number): readonly ClimateReading[] {
    const known = this.#recent.get(placeId)
    if (known !== undefined) return known
    const latest = this.#latest.get(placeId)
    const from = latest === undefined ? '' : addDays(dayOf(latest), 1 - JUDGED_OVER_DAYS)
    const found = readingsOfPlace(this.#reading.sqlite, placeId, from)
    this.#recent.set(placeId, found)
    return found
  }

  /** The place itself and what it stands in, from the inside out. */
  #around(placeId: number): number[] {
    const found: number[] = []
    for (let at: number | null = placeId; at !== null; at = this.#lines.get(at)?.parentId ?? null)
      found.push(at)
    return found
  }

  /** As {@link #around}, but nothing outside the nearest fridge or freezer: the room's readings say nothing of its air. */
  #sharingAir(placeId: number): number[] {
    const around = this.#around(placeId)
    const cold = around.findIndex((id) => ['fridge', 'freezer'].includes(this.#lines.get(id)?.kind ?? ''))
    return cold < 0 ? around : around.slice(0, cold + 1)
  }

  #lotsInside(): ReadonlyMap<number, number> {
    const sums = new Map<number, number>()
    for (const { placeId, lots } of this.#lines.values()) {
      for (const id of this.#around(placeId)) sums.set(id, (sums.get(id) ?? 0) + lots)
    }
    return sums
  }
}

export function listStorage(reading: Reading): Result<'storage.list'> {
  return { places: new StoredPlaces(reading).all() }
}

export function getStorage(reading: Reading, input: ParsedInput<'storage.get'>): PlaceClimate {
  placeOrRefuse(reading, input.placeId, 'placeId')
  const places = new StoredPlaces(reading)
  const place = places.one(input.placeId)
  const limits = places.limits(input.placeId)
  const own = places.ownTerms(input.placeId)
  return {
    place,
    terms:
      own === null
        ? null
        : {
            aim: own.aim,
            highestCelsius: degrees(own.highestCc),
            highestHumidity: percent(own.highestPm),
            roundDays: own.roundDays,
          },
    suggestedAim: places.suggestedAim(input.placeId),
    limits: {
      highestCelsius: degrees(limits.highestCc),
      highestHumidity: percent(limits.highestPm),
      highestSum: limits.highestSum,
      words: limitsInWords(limits),
    },
    ...climateOf(reading, place, limits, input.days),
    lots: lotsInPlace(reading.sqlite, input.placeId, MOST_LOTS).map(
      ({ family, countedUnit, highPercent, quarantined: _, ...lot }) => ({
        ...lot,
        caution: storageCaution(reading, lot.lotId, {
          family,
          countedUnit,
          highPercent,
          freezes: places.freezes(input.placeId),
        }),
      }),
    ),
    batches: batchesOfPlace(reading.sqlite, input.placeId, MOST_BATCHES),
  }
}

type Climate = Pick<PlaceClimate, 'sum' | 'words' | 'trace' | 'traceBy' | 'spells' | 'thaws'>

function climateOf(reading: Reading, place: StoredPlace, limits: ClimateLimits, days: number): Climate {
  if (place.readingsFrom === null || place.latest === null)
    return { sum: null, words: [], trace: [], traceBy: 'day', spells: [], thaws: null }
  const source = place.readingsFrom.placeId
  const from = addDays(dayOf(place.latest), 1 - days)
  const readings = readingsOfPlace(reading.sqlite, source, from)
  const totals = climateTotals(readings, limits)
  const thaws = thawCycles(readings)
  const first = readings[0]
  const drawn = first === undefined ? 0 : daysBetween(dayOf(first.at), dayOf(place.latest))
  const traceBy = drawn > MOST_DAYS_DRAWN ? 'month' : 'day'
  return {
    sum: totals === null ? null : shownSum(totals),
    words: totals === null ? [] : totalsInWords(totals, limits),
    trace: climateOfPlace(reading.sqlite, source, traceBy, from).map(shownDay),
    traceBy,
    spells: (hasLimits(limits) ? timeOutside(readings, limits).spells : [])
      .slice(0, MOST_SPELLS)
      .map(({ highestCc, highestPm, ...spell }) => ({
        ...spell,
        highest: highestCc / 100,
        highestHumidity: percent(highestPm),
      })),
    thaws:
      thaws === null
        ? null
        : {
            peaks: thaws.peaks,
            everyHours: thaws.everyHours,
            rise: thaws.riseCc / 100,
            words: thawsInWords(thaws),
          },
  }
}

/** What readings come to, as the contract shows it. */
export function shownSum(totals: NonNullable<ReturnType<typeof climateTotals>>): ClimateSum {
  const { lowestCc, meanCc, highestCc, meanPm, highestPm, ...rest } = totals
  return {
    ...rest,
    lowest: lowestCc / 100,
    mean: meanCc / 100,
    highest: highestCc / 100,
    meanHumidity: percent(meanPm),
    highestHumidity: percent(highestPm),
  }
}

function shownDay(day: ClimateSummary): ClimateDay {
  return {
    on: day.on,
    low: day.lowCc / 100,
    mean: day.meanCc / 100,
    high: day.highCc / 100,
    lowHumidity: percent(day.lowPm),
    meanHumidity: percent(day.meanPm),
    highHumidity: percent(day.highPm),
  }
}

function degrees(cc: number | null): number | null {
  return cc === null ? null : cc / 100
}

function percent(pm: number | null): number | null {
  return pm === null ? null : pm / 10
}
