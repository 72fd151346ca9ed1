import type { z } from 'zod'
import type { Result } from '../../contract/contract.ts'
import type { WhoIsIt } from '../../contract/fields.ts'
import { refuse } from '../../contract/refusal.ts'
import type { PersonRole } from '../../domain/shared/closed-sets.ts'
import { fold } from '../../domain/shared/fold.ts'
import { type Message, message } from '../../messages/message.ts'
import { canonicalPersonId } from '../../queries/person-records.ts'
import { prepared } from '../../queries/prepared.ts'
import { insertRow } from '../../queries/rows.ts'
import { person, personContact, personRole } from '../../schema/reference-tables.ts'
import type { Reads, Writes, Writing } from './context.ts'

type Who = z.output<typeof WhoIsIt>
type NewPerson = Extract<Who, { newPerson: unknown }>['newPerson']

/** The id of somebody known or made in the same step, with the role they have now; the kept one of joined records. Refuses an unknown id. */
export function personFor(writing: Writing, who: Who, role: PersonRole, field: string): number {
  if ('newPerson' in who) return addPerson(writing, who.newPerson, [role])
  const personId = canonicalPersonId(writing.sqlite, who.personId)
  if (personId === undefined) refuse('not-found', message('book.no-person'), { field })
  writing.db.insert(personRole).values({ personId, role }).onConflictDoNothing().run()
  return personId
}

function addPerson(writing: Writing, facts: NewPerson, roles: readonly PersonRole[]): number {
  const { name, town, creditAs, note, language } = facts
  const row = { name, nameFolded: fold(name), town, creditAs, note, language, createdOn: writing.today }
  const id = insertRow(writing.sqlite, person, row)
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

/** Adds a person. Two people may have one name. */
export const createPerson: Writes<'person.create'> = (writing, input) => {
  const { key, roles, ...facts } = input
  const personId = addPerson(writing, facts, roles)
  return { personId, said: message('people.added', { person: { person: personId } }), undoable: false }
}

interface PersonRow extends Pick<Result<'person.search'>['people'][number], 'personId' | 'name' | 'town'> {
  readonly since: string
  readonly found_as: string
  readonly roles: string | null
}

/** SQL for the roles of a kept person over all its records, as a list with commas. */
export const ROLES_OF_KEPT = `(SELECT group_concat(role, ',') FROM (SELECT DISTINCT role FROM person_role
  WHERE person_id = kept.id OR person_id IN (SELECT id FROM person WHERE merged_into_id = kept.id) ORDER BY role))`

/** People with a name that has a word beginning with the text; a joined record finds the kept one. */
export const searchPeople: Reads<'person.search'> = (reading, input) => {
  const wanted = fold(input.text)
  const rows = prepared(
    reading.sqlite,
    `SELECT kept.id AS personId, kept.name, kept.town, kept.created_on AS since, found.name AS found_as, ${ROLES_OF_KEPT} AS roles,
       max(found.id = kept.id) AS by_own_name
     FROM person AS found JOIN person AS kept ON kept.id = coalesce(found.merged_into_id, found.id)
     WHERE ' ' || found.name_folded LIKE '% ' || ? || '%'
     GROUP BY kept.id
     ORDER BY (found.name_folded LIKE ? || '%') DESC, kept.name_folded, kept.id LIMIT ?`,
  ).all(wanted, wanted, input.limit) as PersonRow[]
  return {
    people: rows.map(({ personId, name, town, since, found_as, roles }) => ({
      ...{ personId, name, town, roles: roles?.split(',') ?? [] },
      tellApart: tellApart(found_as === name ? '' : found_as, town, since.slice(0, 4)),
    })),
  }
}

/** What tells a person apart from others of the name; `name` is another of theirs by which they were found, or ''. */
function tellApart(name: string, town: string, year: string): Message {
  if (name === '')
    return town === ''
      ? message('book.known-since', { year })
      : message('book.known-since-in', { town, year })
  return town === ''
    ? message('book.known-since-as', { name, year })
    : message('book.known-since-as-in', { name, town, year })
}
