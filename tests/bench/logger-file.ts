import { wallClock } from '../../db/domain/climate/reading.ts'
import { freshCollection, timed } from './fresh-collection.ts'

// npm run bench:readings: a data logger's file of 100,000 rows, first looked at and then taken in.

const ROWS = 100_000
const BEGAN_MINUTE = 28_000_000
const EVERY_MINUTES = 10
const { call, remove } = await freshCollection()

const { placeId } = await call('place.create', { key: 'bench-place', name: 'Room', kind: 'room' })
const rows = Array.from({ length: ROWS }, (_, index) => {
  const [day, clock] = wallClock(BEGAN_MINUTE + index * EVERY_MINUTES).split('T') as [string, string]
  const [year, month, date] = day.split('-')
  const degrees = (18 + 4 * Math.sin(index / 144)).toFixed(1).replace('.', ',')
  return `${index + 1};${date}.${month}.${year} ${clock}:00;${degrees};${(45 + (index % 70) / 10).toFixed(1).replace('.', ',')}`
})
const file = { placeId, fileName: 'room.csv', text: ['No;Zeit;Temperatur °C;Feuchte %', ...rows].join('\n') }
await timed(`${ROWS} rows looked at`, () => call('reading.preview-file', file))
await timed(`${ROWS} rows taken in`, () => call('reading.import-file', { key: 'bench-import', ...file }))
await timed('the place shown over all of them', () => call('storage.get', { placeId, days: 36_500 }))
await timed('every place listed', () => call('storage.list', {}))
remove()
