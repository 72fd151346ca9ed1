import { eq } from 'drizzle-orm'
import type { PersonRole } from '../../contract/fields.ts'
import { refuse } from '../../contract/refusal.ts'
import { fold } from '../../domain/shared/fold.ts'
import type { LanguageCode } from '../../messages/languages.ts'
import { message } from '../../messages/message.ts'
import { prepared } from '../../queries/prepared.ts'
import { rowWith } from '../../queries/rows.ts'
import { indexDonor } from '../../queries/search-words.ts'
import { person, personChange, personContact, personRole } from '../../schema/reference-tables.ts'
import { refuseIfChangedLater } from '../book/changed-later.ts'
import type { Reading, Writes, Writing } from '../book/context.ts'

/** What of a person can change and be put back. */
interface PersonState {
  name: string
  town: string
  creditAs: string
  note: string
  language: LanguageCode | ''
  mergedIntoId: number | null
  email: string
  phone: string
  address: string
  mayWrite: boolean
  consentOn: string | null
  roles: PersonRole[]
}
export type PersonField = keyof PersonState

const FIELDS: readonly PersonField[] = [
  'name',
  'town',
  'creditAs',
  'note',
  'language',
  'mergedIntoId',
  'email',
  'phone',
  'address',
  'mayWrite',
  'consentOn',
  'roles',
]

export const updatePerson: Writes<'person.change'> = (writing, input) => {
  const { key, personId, consentOn, ...typed } = input
  const before = stateOrRefuse(writing, personId, 'personId')
  const after = { ...before, ...Object.fromEntries(Object.entries(typed).filter(([, v]) => v !== undefined)) }
  after.roles = [...new Set(after.roles)].toSorted()
  after.consentOn = after.mayWrite ? (consentOn ?? before.consentOn ?? writing.today) : null
  const changed = changePerson(writing, personId, after)
  const person = { person: personId }
  if (changed.length === 0) return { said: message('people.unchanged', { person }), undoable: false }
  const fields = { list: changed.map((field) => message(`people.field.${field}`)) }
  return { said: message('people.changed', { person, fields }), undoable: true }
}

export const mergePeople: Writes<'person.merge'> = (writing, input) => {
  const { keepId, joinId } = input
  if (keepId === joinId) refuse('same-record', message('people.same-record'), { field: 'joinId' })
  stateOrRefuse(writing, keepId, 'keepId')
  stateOrRefuse(writing, joinId, 'joinId')
  // Records that were joined into the one that is joined now follow it, so that one step always leads to the kept one.
  for (const id of [joinId, ...recordsMergedInto(writing, joinId)]) {
    const record = stateOf(writing, id)
    if (record !== undefined) changePerson(writing, id, { ...record, mergedIntoId: keepId })
  }
  const said = message('people.joined', { joined: { person: joinId }, kept: { person: keepId } })
  return { said, undoable: true }
}

/** Puts people back to what they were before an entry. Refused when a later entry changed the same thing again. */
export function restorePeople(writing: Writing, entryId: number): void {
  const changes = writing.db.select().from(personChange).where(eq(personChange.entryId, entryId)).all()
  for (const [personId, fields] of Map.groupBy(changes, (change) => change.personId)) {
    for (const change of fields) refuseIfChangedLater(writing, 'person', change.personId, change)
    const now = stateOf(writing, personId)
    if (now === undefined) throw new Error(`No person ${personId}`)
    const before = Object.fromEntries(fields.map(({ field, before }) => [field, JSON.parse(before)]))
    putState(writing, personId, { ...now, ...before })
  }
}

/** Changes a person and keeps what was before, under the entry being written. Answers the fields that changed. */
function changePerson(writing: Writing, personId: number, after: PersonState): PersonField[] {
  const before = stateOf(writing, personId)
  if (before === undefined) throw new Error(`No person ${personId}`)
  const json = (state: PersonState, field: PersonField) => JSON.stringify(state[field])
  const changed = FIELDS.filter((field) => json(before, field) !== json(after, field))
  for (const field of changed) {
    const row = { personId, field, before: json(before, field), after: json(after, field) }
    writing.db
      .insert(personChange)
      .values({ ...row, entryId: writing.entryId })
      .run()
  }
  if (changed.length > 0) putState(writing, personId, after)
  return changed
}

function putState(writing: Writing, personId: number, state: PersonState): void {
  const { db } = writing
  const { name, town, creditAs, note, language, mergedIntoId } = state
  const known = { name, nameFolded: fold(name), town, creditAs, note, language, mergedIntoId }
  db.update(person).set(known).where(eq(person.id, personId)).run()
  const { email, phone, address, mayWrite, consentOn } = state
  const contact = { email, phone, address, mayWrite, consentOn }
  db.insert(personContact)
    .values({ personId, ...contact })
    .onConflictDoUpdate({ target: personContact.personId, set: contact })
    .run()
  db.delete(personRole).where(eq(personRole.personId, personId)).run()
  for (const role of state.roles) db.insert(personRole).values({ personId, role }).run()
  indexDonor(writing.sqlite, personId)
}

/** How a person is reached, and whether they may be written to; nothing where nothing was ever said. */
export function contactOf({ sqlite }: Reading, personId: number) {
  const contact = rowWith(sqlite, personContact, { personId })
  return {
    email: contact?.email ?? '',
    phone: contact?.phone ?? '',
    address: contact?.address ?? '',
    mayWrite: contact?.mayWrite ?? false,
    consentOn: contact?.consentOn ?? null,
  }
}

function stateOf(reading: Reading, personId: number): PersonState | undefined {
  const { db, sqlite } = reading
  const known = rowWith(sqlite, person, { id: personId })
  if (known === undefined) return undefined
  const roles = db.select().from(personRole).where(eq(personRole.personId, personId)).all()
  return {
    name: known.name,
    town: known.town,
    creditAs: known.creditAs,
    note: known.note,
    language: known.language,
    mergedIntoId: known.mergedIntoId,
    ...contactOf(reading, personId),
    roles: roles.map(({ role }) => role).toSorted(),
  }
}

/** A person's own record, or a refusal where it is not there or was joined into another. */
function stateOrRefuse(writing: Writing, personId: number, field: string): PersonState {
  const state = stateOf(writing, personId)
  if (state === undefined) refuse('not-found', message('people.not-found'), { field })
  if (state.mergedIntoId !== null) {
    const name = stateOf(writing, state.mergedIntoId)?.name ?? ''
    refuse('merged-already', message('people.merged-already', { name }), { field })
  }
  return state
}

function recordsMergedInto(reading: Reading, personId: number): number[] {
  return prepared(reading.sqlite, 'SELECT id FROM person WHERE merged_into_id = ?')
    .pluck()
    .all(personId) as number[]
}
