import { refuse } from '../../contract/refusal.ts'
import type { ReadOff } from '../../contract/storage-operations.ts'
import { airInWords, limitsInWords } from '../../domain/climate/climate-words.ts'
import { beyond } from '../../domain/climate/limits.ts'
import { type ClimateReading, fromFahrenheit } from '../../domain/climate/reading.ts'
import { addDays } from '../../domain/dates/day-arithmetic.ts'
import { isoDate } from '../../domain/dates/iso-date.ts'
import { message } from '../../messages/message.ts'
import { readingsOfPlace } from '../../queries/place-readings.ts'
import { climateBatch, climateReading, placeTerms } from '../../schema/climate-tables.ts'
import type { Writes, Writing } from '../book/context.ts'
import { placeOrRefuse } from '../book/places.ts'
import { StoredPlaces } from './place-climate.ts'

/** As far from 0 °C as the file takes a reading, hundredths of a degree. */
const HOTTEST_OR_COLDEST_CC = 10_000

export const setTerms: Writes<'place.change-terms'> = (writing, input) => {
  const place = placeOrRefuse(writing, input.placeId, 'placeId')
  const { placeId, aim, roundDays, highestCelsius, highestHumidity } = input
  writing.db
    .insert(placeTerms)
    .values({
      placeId,
      aim,
      highestCc: highestCelsius === null ? null : Math.round(100 * highestCelsius),
      highestPm: highestHumidity === null ? null : Math.round(10 * highestHumidity),
      roundDays,
      entryId: writing.entryId,
    })
    .run()
  const places = new StoredPlaces(writing)
  return {
    place: places.one(placeId),
    said: message('storage.terms-said', {
      place: place.path,
      aim: message(`storage.aim-${aim}`),
      limits: limitsInWords(places.limits(placeId)),
    }),
    undoable: true,
  }
}

export const noteReading: Writes<'reading.record'> = (writing, input) => {
  const place = placeOrRefuse(writing, input.placeId, 'placeId')
  const read = writeReading(writing, place, input, '')
  const places = new StoredPlaces(writing)
  const { tooWarm, tooDamp } = beyond(read, places.limits(place.id))
  return {
    place: places.one(place.id),
    warnings: [
      ...(tooWarm ? [message('storage.too-warm-for', { place: place.path })] : []),
      ...(tooDamp ? [message('storage.too-damp-for', { place: place.path })] : []),
    ],
    said: message('storage.reading-said', { place: place.path, air: airInWords(read) }),
    undoable: true,
  }
}

/** Writes what was read off the instruments of a place, or refuses it; `field` stands before the input's names. */
export function writeReading(
  writing: Writing,
  place: { readonly id: number; readonly path: string },
  input: ReadOff & { readonly on: string; readonly note?: string },
  field: string,
): ClimateReading {
  const at = `${input.on}T${input.time}`
  const there = readingsOfPlace(writing.sqlite, place.id, input.on, addDays(isoDate(input.on), 1))
  if (there.some((reading) => reading.at === at)) {
    const told = message('storage.reading-there', { place: place.path, time: input.time })
    refuse('already-there', told, { field: `${field}time`, todo: message('storage.reading-there-todo') })
  }
  const temperatureCc =
    input.unit === 'F' ? fromFahrenheit(input.temperature) : Math.round(100 * input.temperature)
  if (Math.abs(temperatureCc) > HOTTEST_OR_COLDEST_CC)
    refuse(
      'reading-unfit',
      message('storage.reading-unfit', { degrees: input.temperature, unit: input.unit }),
      {
        field: `${field}temperature`,
        todo: message('storage.reading-unfit-todo'),
      },
    )
  const humidityPm = input.humidity === null ? null : Math.round(10 * input.humidity)
  const { id } = writing.db
    .insert(climateBatch)
    .values({
      placeId: place.id,
      readings: 1,
      leftOut: 0,
      note: input.note ?? '',
      entryId: writing.entryId,
    })
    .returning({ id: climateBatch.id })
    .get()
  writing.db
    .insert(climateReading)
    .values({ placeId: place.id, at, batchId: id, temperatureCc, humidityPm })
    .run()
  return { at, temperatureCc, humidityPm }
}
