import { minuteOf, wallClock } from '../db/domain/climate/reading.ts'
import type { DemoStep } from './demo-book.ts'
import type { RowOf } from './demo-tables.ts'

const MINUTES_IN_DAY = 1_440
const DAYS_IN_YEAR = 365.25
/** The warmest day of a year is about so many days in. */
const WARMEST_DAY = 200
/** A heater that melts ice is on for so long. */
const THAW_MINUTES = 30

/** A logger's file written out from a line of figures, and what its place is meant for. */
export function climateStep({ where, cells }: RowOf<'climates'>): DemoStep {
  return {
    on: cells.on,
    where,
    async write(book) {
      const placeId = await book.place(cells.place)
      await book.write('place.change-terms', `terms-${cells.place}`, {
        placeId,
        aim: cells.aim,
        roundDays: 30,
      })
      await book.write('reading.import-file', `trace-${cells.place}`, {
        placeId,
        fileName: `${cells.place}.csv`,
        text: fileOf(cells),
      })
    },
  }
}

function fileOf(cells: RowOf<'climates'>['cells']): string {
  const began = minuteOf(`${cells.from}T00:00`)
  const rows = Array.from(
    { length: Math.floor((cells.days * MINUTES_IN_DAY) / cells.every_minutes) },
    (_, index) => {
      const minute = began + index * cells.every_minutes
      const humidity = cells.humidity === null ? '' : (cells.humidity + 4 * daily(minute)).toFixed(1)
      return `${wallClock(minute).replace('T', ' ')},${celsiusAt(cells, began, minute).toFixed(2)},${humidity}`
    },
  )
  return ['Time,Temperature (°C),Humidity (%)', ...rows].join('\n')
}

function celsiusAt(cells: RowOf<'climates'>['cells'], began: number, minute: number): number {
  const season = Math.cos((2 * Math.PI * (minute / MINUTES_IN_DAY - WARMEST_DAY)) / DAYS_IN_YEAR)
  const usual = cells.celsius + cells.season_swing * season + cells.swing * daily(minute)
  if (cells.failed_from !== null) {
    const into = minute - minuteOf(`${cells.failed_from}T00:00`)
    if (into >= 0 && into < (cells.failed_days ?? 0) * MINUTES_IN_DAY)
      return (cells.failed_celsius ?? usual) + daily(minute)
  }
  const thaws = cells.thaw_hours !== null && (minute - began) % (cells.thaw_hours * 60) < THAW_MINUTES
  return usual + (thaws ? (cells.thaw_rise ?? 0) : 0)
}

/** From -1 in the small hours to 1 in the afternoon. */
function daily(minute: number): number {
  return Math.sin((2 * Math.PI * (minute - 9 * 60)) / MINUTES_IN_DAY)
}
