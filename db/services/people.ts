import { eq } from 'drizzle-orm'
import type { z } from 'zod'
import type { ParsedInput, Value } from '../contract/contract.ts'
import type { WhoIsIt } from '../contract/intake-operations.ts'
import { refuse } from '../contract/refusal.ts'
import { fold } from '../domain/shared/fold.ts'
import { prepared } from '../queries/prepared.ts'
import { person, personContact, personRole } from '../schema/reference-tables.ts'
import type { Reading, Writing } from './context.ts'

type Role = 'donor' | 'member' | 'grower'
type Who = z.output<typeof WhoIsIt>
type NewPerson = Extract<Who, { newPerson: unknown }>['newPerson']

/** The id of somebody known or made in the same step, with the role they have now. Refuses an unknown id. */
export function personFor(writing: Writing, who: Who, role: Role, field: string): number {
  if ('newPerson' in who) return addPerson(writing, who.newPerson, [role])
  const known = writing.db.select().from(person).where(eq(person.id, who.personId)).get()
  if (!known)
    refuse('not-found', 'That person is not in the book. Choose them again, or add them.', { field })
  writing.db.insert(personRole).values({ personId: who.personId, role }).onConflictDoNothing().run()
  return who.personId
}

function addPerson(writing: Writing, facts: NewPerson, roles: readonly Role[]): number {
  const { id } = writing.db
    .insert(person)
    .values({
      name: facts.name,
      nameFolded: fold(facts.name),
      town: facts.town,
      creditAs: facts.creditAs,
      note: facts.note,
      createdOn: writing.today,
    })
    .returning({ id: person.id })
    .get()
  const { email, phone, address, mayWrite } = facts
  if (mayWrite || email !== '' || phone !== '' || address !== '') {
    const consentOn = mayWrite ? writing.today : null
    writing.db
      .insert(personContact)
      .values({ personId: id, email, phone, address, mayWrite, consentOn })
      .run()
  }
  for (const role of new Set(roles)) writing.db.insert(personRole).values({ personId: id, role }).run()
  return id
}

export function createPerson(
  writing: Writing,
  input: ParsedInput<'person.create'>,
): Omit<Value<'person.create'>, 'entryId'> {
  const { key, roles, ...facts } = input
  const personId = addPerson(writing, facts, roles)
  return { personId, said: `Added ${facts.name}`, undoable: false }
}

interface PersonRow {
  readonly id: number
  readonly name: string
  readonly town: string
  readonly since: string
  readonly roles: string | null
}

export function searchPeople(reading: Reading, input: ParsedInput<'person.search'>): Value<'person.search'> {
  const wanted = fold(input.text)
  const rows = prepared(
    reading.sqlite,
    `SELECT person.id, name, town, created_on AS since,
       (SELECT group_concat(role, ',') FROM person_role WHERE person_id = person.id) AS roles
     FROM person
     WHERE ' ' || name_folded LIKE '% ' || ? || '%'
     ORDER BY (name_folded LIKE ? || '%') DESC, name_folded, person.id LIMIT ?`,
  ).all(wanted, wanted, input.limit) as PersonRow[]
  return {
    people: rows.map((row) => ({
      personId: row.id,
      name: row.name,
      town: row.town,
      roles: row.roles?.split(',') ?? [],
      tellApart: [row.town, `in the book since ${row.since.slice(0, 4)}`]
        .filter((part) => part !== '')
        .join(', '),
    })),
  }
}

export function getPerson(reading: Reading, input: ParsedInput<'person.get'>): Value<'person.get'> {
  const who = reading.db.select().from(person).where(eq(person.id, input.personId)).get()
  if (!who) refuse('not-found', 'That person is not in the book.', { field: 'personId' })
  const contact = reading.db.select().from(personContact).where(eq(personContact.personId, who.id)).get()
  const roles = reading.db.select().from(personRole).where(eq(personRole.personId, who.id)).all()
  const gave = prepared(
    reading.sqlite,
    `SELECT accession.id AS accessionId, number, variety.name AS variety, received_on AS receivedOn
     FROM accession JOIN variety ON variety.id = variety_id WHERE donor_id = ? ORDER BY received_on DESC, accession.id DESC`,
  ).all(who.id) as Value<'person.get'>['gave']
  return {
    personId: who.id,
    name: who.name,
    town: who.town,
    creditAs: who.creditAs,
    note: who.note,
    email: contact?.email ?? '',
    phone: contact?.phone ?? '',
    address: contact?.address ?? '',
    mayWrite: contact?.mayWrite ?? false,
    roles: roles.map(({ role }) => role),
    gave,
    took: tookBy(reading, who.id),
  }
}

function tookBy(reading: Reading, personId: number): Value<'person.get'>['took'] {
  const visits = prepared(
    reading.sqlite,
    `SELECT id AS withdrawalId, on_date AS "on", purpose, promised FROM withdrawal
     WHERE person_id = ? AND NOT EXISTS (SELECT 1 FROM entry WHERE takes_back_id = withdrawal.entry_id)
     ORDER BY on_date DESC, id DESC`,
  ).all(personId) as Omit<Value<'person.get'>['took'][number], 'lots'>[]
  const lots = prepared(
    reading.sqlite,
    `SELECT lot.id AS lotId, lot.number, variety.name AS variety, -movement.count AS count
     FROM movement JOIN lot ON lot.id = lot_id JOIN accession ON accession.id = accession_id
     JOIN variety ON variety.id = variety_id WHERE withdrawal_id = ? ORDER BY movement.id`,
  )
  return visits.map((visit) => ({
    ...visit,
    lots: lots.all(visit.withdrawalId) as Value<'person.get'>['took'][number]['lots'],
  }))
}
