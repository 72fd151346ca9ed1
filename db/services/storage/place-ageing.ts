import { type DayFigure, usualDay } from '../../domain/climate/usual-day.ts'
import { daysBetween } from '../../domain/dates/day-arithmetic.ts'
import { type IsoDate, isoDate } from '../../domain/dates/iso-date.ts'
import type { PaceRemark } from '../../domain/viability/equation.ts'
import { type AgeingCrop, moistureInAir, type PaceModel } from '../../domain/viability/pace-model.ts'
import type { Message } from '../../messages/message.ts'
import { climateKinds } from '../../queries/forecast-rows.ts'
import { climateOfPlace, placeWithReadings } from '../../queries/lot-climate.ts'
import type { Reading } from '../book/context.ts'

/** How damp a lot is taken to be. */
export interface LotMoisture {
  /** As measured, percent of fresh weight; null: nobody measured. */
  readonly measured: number | null
  /** Whether it is kept from the air around it; null: nobody said. */
  readonly airtight: boolean | null
}

/** How fast a lot ages in one place: deviates lost from the first day of readings up to each later day. */
export interface PlaceAgeing {
  /** Deviates lost between two days, the later one left out. Days without readings age as the usual day of those with. */
  lost(from: IsoDate, until: IsoDate): number
  /** Deviates lost a day from today on: on the usual day of the last year with readings. */
  readonly daily: number
  /** Whether it has readings, by whose usual day time without any is computed. */
  readonly read: boolean
  /** Whether temperature and moisture were measured. */
  readonly measured: boolean
  /** Whether neither was, in a room: seed kept as lists of years are taken to go by. */
  readonly usual: boolean
  /** What is remarkable of the days between two, the later one left out. */
  remarks(from: IsoDate, until: IsoDate): readonly PaceRemark[]
  /** What is remarkable of the time that {@link daily} is taken from. */
  readonly remarksAhead: readonly PaceRemark[]
  /** Why nothing can be said of the days between two, the later one left out; or null. */
  refused(from: IsoDate, until: IsoDate): Message | null
  /** Why nothing can be said of the time to come, or null. */
  readonly refusedAhead: Message | null
}

/** What a place is taken to be where nobody measured: degrees C. Common practice, no source. */
export const ASSUMED_CELSIUS = { room: 20, fridge: 5, freezer: -18 } as const
const EPOCH = isoDate('1970-01-01')
const dayNumber = (day: IsoDate) => daysBetween(EPOCH, day)

interface Day {
  readonly number: number
  readonly celsius: number
  readonly humidity: number | null
}

/**
 * The places of one collection as seed ages in them, for one run of computation.
 *
 * A place's readings are read once, and summed up once for each way of ageing, however many lots lay there.
 */
export class PlacesAgeing {
  readonly #reading: Reading
  readonly #kinds: Map<number, keyof typeof ASSUMED_CELSIUS>
  readonly #source = new Map<number, number | null>()
  readonly #days = new Map<number, readonly Day[]>()
  readonly #kept = new Map<string, PlaceAgeing>()

  constructor(reading: Reading) {
    this.#reading = reading
    this.#kinds = new Map(climateKinds(reading.sqlite).map((row) => [row.placeId, row.kind]))
  }

  /** How a lot of a crop ages in a place; null: wherever it was before it was in the book, or in no place. */
  of(placeId: number | null, crop: AgeingCrop, model: PaceModel, moisture: LotMoisture): PlaceAgeing {
    const source = placeId === null ? null : this.#sourceOf(placeId)
    const kind = placeId === null ? 'room' : (this.#kinds.get(placeId) ?? 'room')
    const key = `${source ?? kind}|${crop.cropId}|${moisture.measured}|${moisture.airtight}`
    const kept = this.#kept.get(key)
    if (kept !== undefined) return kept
    const fresh =
      source === null
        ? withoutReadings(kind, crop, model, moisture)
        : withReadings(this.#daysOf(source), crop, model, moisture)
    this.#kept.set(key, fresh)
    return fresh
  }

  #sourceOf(placeId: number): number | null {
    const known = this.#source.get(placeId)
    if (known !== undefined) return known
    const found = placeWithReadings(this.#reading.sqlite, placeId)
    this.#source.set(placeId, found)
    return found
  }

  #daysOf(placeId: number): readonly Day[] {
    const known = this.#days.get(placeId)
    if (known !== undefined) return known
    const days = climateOfPlace(this.#reading.sqlite, placeId, 'day').map((day) => ({
      number: dayNumber(isoDate(day.on)),
      celsius: day.meanCc / 100,
      humidity: day.meanPm === null ? null : day.meanPm / 1_000,
    }))
    this.#days.set(placeId, days)
    return days
  }
}

/** Sealed seed stays as it was measured; other seed follows the air, where that was measured. */
function moistureOn(oil: number | null, moisture: LotMoisture, celsius: number, humidity: number | null) {
  if (moisture.measured !== null && (moisture.airtight !== false || humidity === null))
    return moisture.measured
  return humidity === null ? moistureInAir(oil) : moistureInAir(oil, { celsius, humidity })
}

function withoutReadings(
  kind: keyof typeof ASSUMED_CELSIUS,
  crop: AgeingCrop,
  model: PaceModel,
  moisture: LotMoisture,
): PlaceAgeing {
  const celsius = ASSUMED_CELSIUS[kind]
  const pace = model.pace({ celsius, moisture: moistureOn(crop.oil, moisture, celsius, null) })
  const daily = pace.kind === 'pace' ? 1 / pace.sigmaDays : 0
  const remarks = pace.kind === 'pace' ? pace.remarks : []
  const refused = pace.kind === 'refused' ? pace.because : null
  return {
    lost: (from, until) => Math.max(0, daysBetween(from, until)) * daily,
    daily,
    read: false,
    measured: false,
    usual: kind === 'room' && moisture.measured === null,
    remarks: (from, until) => (from < until ? remarks : []),
    remarksAhead: remarks,
    refused: (from, until) => (from < until ? refused : null),
    refusedAhead: refused,
  }
}

function withReadings(
  days: readonly Day[],
  crop: AgeingCrop,
  model: PaceModel,
  moisture: LotMoisture,
): PlaceAgeing {
  const sums = new Float64Array(days.length + 1)
  const paced: DayFigure[] = []
  const remarked = new Map<PaceRemark, Tally>()
  const refusals: { readonly number: number; readonly because: Message }[] = []
  for (const [index, { number, celsius, humidity }] of days.entries()) {
    const pace = model.pace({ celsius, moisture: moistureOn(crop.oil, moisture, celsius, humidity) })
    sums[index + 1] = (sums[index] as number) + (pace.kind === 'pace' ? 1 / pace.sigmaDays : 0)
    if (pace.kind === 'refused') {
      refusals.push({ number, because: pace.because })
      continue
    }
    paced.push({ number, figure: 1 / pace.sigmaDays })
    for (const remark of pace.remarks) {
      const tally = remarked.get(remark) ?? new Tally(days.length)
      remarked.set(remark, tally)
      tally.count(index)
    }
  }
  const yearBefore = (days.at(-1)?.number ?? 0) - 364
  const lastYear = { first: firstFrom(days, yearBefore), end: days.length }
  const ofLastYear = paced.slice(firstFrom(paced, yearBefore))
  const usual = usualDay(paced)
  const between = (from: IsoDate, until: IsoDate) => ({
    first: firstFrom(days, dayNumber(from)),
    end: firstFrom(days, dayNumber(until)),
  })
  const lostIn = ({ first, end }: DaySpan) => (sums[end] as number) - (sums[first] as number)
  const remarksIn = (span: DaySpan) =>
    [...remarked].filter(([, tally]) => tally.between(span) > 0).map(([remark]) => remark)
  return {
    lost(from, until) {
      const span = between(from, until)
      return lostIn(span) + Math.max(0, daysBetween(from, until) - (span.end - span.first)) * usual
    },
    daily: ofLastYear.length === paced.length ? usual : usualDay(ofLastYear),
    read: true,
    usual: false,
    measured: moisture.measured !== null || days.some(({ humidity }) => humidity !== null),
    remarks: (from, until) => remarksIn(between(from, until)),
    remarksAhead: remarksIn(lastYear),
    refused(from, until) {
      const [first, end] = [dayNumber(from), dayNumber(until)]
      return refusals.find(({ number }) => number >= first && number < end)?.because ?? null
    },
    refusedAhead: ofLastYear.length > 0 ? null : (refusals.at(-1)?.because ?? null),
  }
}

/** Days of a place's readings from the first up to but not including the end, by their index. */
interface DaySpan {
  readonly first: number
  readonly end: number
}

/** How many days up to each were of a kind; days are counted in order. */
class Tally {
  readonly #marks: Uint8Array
  #sums: Uint32Array | null = null

  constructor(days: number) {
    this.#marks = new Uint8Array(days)
  }

  count(index: number): void {
    this.#marks[index] = 1
  }

  between({ first, end }: DaySpan): number {
    this.#sums ??= this.#summed()
    return (this.#sums[end] as number) - (this.#sums[first] as number)
  }

  #summed(): Uint32Array {
    const sums = new Uint32Array(this.#marks.length + 1)
    for (const [index, mark] of this.#marks.entries()) sums[index + 1] = (sums[index] as number) + mark
    return sums
  }
}

/** Where in the days the first that is not before a day stands. */
function firstFrom(days: readonly { readonly number: number }[], number: number): number {
  let [low, high] = [0, days.length]
  while (low < high) {
    const middle = (low + high) >> 1
    if ((days[middle]?.number ?? 0) < number) low = middle + 1
    else high = middle
  }
  return low
}
