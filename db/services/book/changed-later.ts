import { refuse } from '../../contract/refusal.ts'
import { message } from '../../messages/message.ts'
import { notUndone } from '../../queries/measurements.ts'
import { prepared } from '../../queries/prepared.ts'
import type { Reading } from './context.ts'
import { saidOf } from './said.ts'

/** What an entry changed: one field, or the only one that can change. */
interface Change {
  readonly id: number
  readonly field?: string
}

/** Refuses to put something back to what it was before a change, where a later entry that stands changed it again. */
export function refuseIfChangedLater(
  reading: Reading,
  of: 'lot' | 'person' | 'crop' | 'place',
  ownerId: number | string,
  { id, field }: Change,
): void {
  const change = `${of}_change`
  const later = prepared(
    reading.sqlite,
    `SELECT entry.said FROM ${change} JOIN entry ON entry.id = ${change}.entry_id
     WHERE ${change}.${of}_id = ? AND ${change}.id > ? ${field === undefined ? '' : 'AND field = ?'} AND ${notUndone(change)} LIMIT 1`,
  )
    .pluck()
    .get(ownerId, id, ...(field === undefined ? [] : [field])) as string | undefined
  if (later === undefined) return
  refuse('cannot-undo', message('entry.changed-later', { said: saidOf(later) }), {
    field: 'entryId',
  })
}
