import { refuse } from '../../contract/refusal.ts'
import { daysBetween } from '../../domain/dates/day-arithmetic.ts'
import { isoDate } from '../../domain/dates/iso-date.ts'
import { message } from '../../messages/message.ts'
import { prepared } from '../../queries/prepared.ts'
import { askOnce } from './ask-once.ts'
import type { Writing } from './context.ts'

/** Fields that say when something happened, in the input of any operation. Days to come, such as a promise's, have others. */
const WHEN_IT_HAPPENED: ReadonlySet<string> = new Set([
  ...['on', 'since', 'receivedOn', 'offeredOn', 'startedOn', 'consentOn'],
])

/** Fields of days that often lie years back where an old book is typed in. */
const OFTEN_LONG_AGO: ReadonlySet<string> = new Set(['receivedOn', 'offeredOn', 'consentOn'])

/** Fields that name the lots that it happened to. */
const LOTS: ReadonlySet<string> = new Set(['lotId', 'lotIds', 'intoLotId', 'fromLotIds', 'parentLotId'])

/** What may have been found of seed before it came here, by whoever gave it; not where it takes seed from the lot. */
const MAY_COME_BEFORE: ReadonlySet<string> = new Set([
  ...[
    'germination.start',
    'germination.record',
    'lot.record-weight',
    'moisture.record',
    'lot.change-container',
  ],
])

/** So old that a wrong year was typed more often than not: a day of last year for one of these weeks. */
const LONG_AGO_DAYS = 330

interface Found {
  readonly days: readonly { readonly day: string; readonly field: string }[]
  readonly lots: readonly number[]
}

interface DatedLot {
  readonly number: string
  /** The day of its first movement, or null while it has none. */
  readonly since: string | null
  readonly harvest: number | null
}

/**
 * Refuses a day that cannot be: one after today, or one on which a lot that the operation is about was not in the book
 * yet. Asks once about one that is odd: about a year ago and more, or before the year of the lot's harvest.
 *
 * One rule for every operation that writes, by the names of its fields.
 */
export function refuseImpossibleDays(writing: Writing, operation: string, input: object): void {
  const { days, lots } = datedIn(input, '')
  if (days.length === 0) return
  for (const { day, field } of days)
    if (day > writing.today)
      refuse('day-not-come', message('book.day-to-come', { day: { day } }), {
        field,
        todo: message('book.day-to-come-todo'),
      })
  const known = lots.map((id) => datedLot(writing, id)).filter((lot) => lot !== undefined)
  const mayComeBefore = MAY_COME_BEFORE.has(operation)
  const takesSeed = !mayComeBefore || ('fromStock' in input && input.fromStock === true)
  for (const { day, field } of days) {
    const missing = known.find(({ since }) => since !== null && since > day)
    if (missing !== undefined && takesSeed)
      refuse(
        'before-its-lot',
        message('book.before-its-lot', { lot: missing.number, since: { day: missing.since ?? '' } }),
        {
          field,
          todo: message('book.before-its-lot-todo'),
        },
      )
    for (const { number, harvest } of known) askIfBeforeHarvest(writing, { number, harvest, day, field })
    if (!mayComeBefore && !OFTEN_LONG_AGO.has(field)) askIfLongAgo(writing, day, field)
  }
}

/** Asks once about a day before the year in which the seed was harvested. */
export function askIfBeforeHarvest(
  writing: Writing,
  { number, harvest, day, field }: Pick<DatedLot, 'number' | 'harvest'> & { day: string; field: string },
): void {
  if (harvest === null || Number(day.slice(0, 4)) >= harvest) return
  askOnce(
    writing,
    day,
    message('book.before-harvest', { day: { day }, lot: number, harvest: String(harvest) }),
    field,
  )
}

function askIfLongAgo(writing: Writing, day: string, field: string): void {
  const ago = daysBetween(isoDate(day), writing.today)
  if (ago < LONG_AGO_DAYS) return
  const months = Math.round(ago / 30.44)
  askOnce(writing, day, message('book.long-ago', { day: { day }, months }), field)
}

function datedIn(value: unknown, path: string): Found {
  if (typeof value !== 'object' || value === null) return { days: [], lots: [] }
  const found = Object.entries(value).map(([name, part]): Found => {
    const field = path === '' ? name : `${path}.${name}`
    if (typeof part === 'string' && WHEN_IT_HAPPENED.has(name))
      return { days: [{ day: part, field }], lots: [] }
    if (LOTS.has(name)) return { days: [], lots: [part].flat().filter((id) => typeof id === 'number') }
    return datedIn(part, field)
  })
  return { days: found.flatMap(({ days }) => days), lots: found.flatMap(({ lots }) => lots) }
}

function datedLot({ sqlite }: Writing, id: number): DatedLot | undefined {
  const dated = prepared(
    sqlite,
    `SELECT number, harvest_from AS harvest,
       (SELECT on_date FROM movement WHERE id = (SELECT min(id) FROM movement WHERE lot_id = lot.id)) AS since
     FROM lot WHERE id = ?`,
  )
  return dated.get(id) as DatedLot | undefined
}
