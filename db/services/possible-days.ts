import { refuse } from '../contract/refusal.ts'
import { prepared } from '../queries/prepared.ts'
import type { Writing } from './context.ts'

/** Fields that say when something happened, in the input of any operation. Days to come, such as a promise's, have others. */
const WHEN_IT_HAPPENED: ReadonlySet<string> = new Set([
  ...['on', 'since', 'receivedOn', 'offeredOn', 'startedOn', 'consentOn'],
])

/** Fields that name the lots that it happened to. */
const LOTS: ReadonlySet<string> = new Set(['lotId', 'lotIds', 'intoLotId', 'fromLotIds', 'parentLotId'])

/** What may have been found of seed before it came here, by whoever gave it. */
const MAY_COME_BEFORE: ReadonlySet<string> = new Set([
  ...[
    'germination.begin',
    'germination.record',
    'lot.weigh-seeds',
    'moisture.note',
    'lot.note-container',
    'entry.take-back',
  ],
])

interface Found {
  readonly days: readonly { readonly day: string; readonly field: string }[]
  readonly lots: readonly number[]
}

/**
 * Refuses a day that cannot be: one after today, or one on which a lot that the operation is about was not in the book yet.
 * One rule for every operation that writes, by the names of its fields.
 */
export function refuseImpossibleDays(writing: Writing, operation: string, input: object): void {
  const { days, lots } = datedIn(input, '')
  for (const { day, field } of days)
    if (day > writing.today)
      refuse('value-refused', `${day} has not come yet. Check the date.`, {
        field,
        todo: 'Give today or an earlier day.',
      })
  if (MAY_COME_BEFORE.has(operation)) return
  for (const { day, field } of days) {
    const lot = notYetThere(writing, lots, day)
    if (lot !== undefined)
      refuse('value-refused', `${lot.number} is in the book from ${lot.since} on only.`, {
        field,
        todo: 'Give that day or a later one, or choose another lot.',
      })
  }
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

/** The first of some lots whose first movement is after a day. */
function notYetThere({ sqlite }: Writing, lots: readonly number[], day: string) {
  const since = prepared(
    sqlite,
    `SELECT lot.number, movement.on_date AS since FROM movement JOIN lot ON lot.id = movement.lot_id
     WHERE movement.id = (SELECT min(id) FROM movement WHERE lot_id = ?)`,
  )
  return lots
    .map((id) => since.get(id) as { number: string; since: string } | undefined)
    .find((lot) => lot !== undefined && lot.since > day)
}
