import type { Result } from '../../contract/contract.ts'
import type { PersonRole } from '../../contract/fields.ts'
import { refuse } from '../../contract/refusal.ts'
import { LANGUAGES } from '../../messages/languages.ts'
import { type Message, message } from '../../messages/message.ts'
import { notUndone } from '../../queries/measurements.ts'
import { canonicalPersonId, isRecordOf } from '../../queries/person-records.ts'
import { prepared } from '../../queries/prepared.ts'
import { rowWith } from '../../queries/rows.ts'
import { person } from '../../schema/reference-tables.ts'
import { heldIn } from '../book/amounts.ts'
import type { Reading, Reads } from '../book/context.ts'
import { lotOrRefuse } from '../book/new-lot.ts'
import { ROLES_OF_KEPT } from '../book/people.ts'
import { visitsOf } from '../stock/promises.ts'
import { contactOf, type PersonField } from './change-person.ts'

type PersonRecord = Result<'person.get'>

const MOST_VISITS = 200

/** What is known of a person. Asked for a joined record, it answers the one that is kept. */
export const getPerson: Reads<'person.get'> = (reading, input) => {
  const personId = canonicalPersonId(reading.sqlite, input.personId)
  const who = personId && rowWith(reading.sqlite, person, { id: personId })
  if (!who) refuse('not-found', message('people.not-found'), { field: 'personId' })
  const roles = prepared(reading.sqlite, `SELECT ${ROLES_OF_KEPT} FROM person AS kept WHERE kept.id = ?`)
    .pluck()
    .get(who.id) as string | null
  return {
    personId: who.id,
    name: who.name,
    town: who.town,
    creditAs: who.creditAs,
    note: who.note,
    language: who.language,
    since: who.createdOn,
    ...contactOf(reading, who.id),
    roles: (roles?.split(',') ?? []) as PersonRecord['roles'],
    gave: gaveBy(reading, who.id),
    took: visitsOf(reading, who.id, MOST_VISITS),
    broughtBack: broughtBackBy(reading, who.id),
    joined: joinedInto(reading, who.id),
    changes: changesOf(reading, who.id),
  }
}

function gaveBy(reading: Reading, personId: number): PersonRecord['gave'] {
  return prepared(
    reading.sqlite,
    `SELECT accession.id AS accessionId, number, variety.name AS variety, received_on AS receivedOn,
       (SELECT min(lot.id) FROM lot WHERE accession_id = accession.id) AS lotId
     FROM accession JOIN variety ON variety.id = variety_id
     WHERE ${isRecordOf('donor_id')} AND ${notUndone('accession')} ORDER BY received_on DESC, accession.id DESC`,
  ).all(personId, personId) as PersonRecord['gave']
}

function broughtBackBy(reading: Reading, personId: number): PersonRecord['broughtBack'] {
  const rows = prepared(
    reading.sqlite,
    `SELECT lot_id AS lotId, on_date AS "on" FROM seed_return
     WHERE ${isRecordOf('person_id')} AND ${notUndone('seed_return')} ORDER BY on_date DESC, id DESC`,
  ).all(personId, personId) as { lotId: number; on: string }[]
  return rows.map(({ lotId, on }) => {
    const lot = lotOrRefuse(reading, lotId, 'personId')
    return {
      lotId,
      lotNumber: lot.lotNumber,
      variety: lot.variety,
      on,
      words: heldIn(lot).words,
    }
  })
}

function joinedInto(reading: Reading, personId: number): PersonRecord['joined'] {
  return prepared(
    reading.sqlite,
    `SELECT person.id AS personId, name, town, credit_as AS creditAs, note, language, coalesce(email, '') AS email,
       coalesce(phone, '') AS phone, coalesce(address, '') AS address,
       (SELECT max(entry_id) FROM person_change WHERE person_id = person.id AND field = 'mergedIntoId'
          AND ${notUndone('person_change')}) AS entryId
     FROM person LEFT JOIN person_contact ON person_contact.person_id = person.id
     WHERE merged_into_id = ? ORDER BY name_folded, person.id`,
  ).all(personId) as PersonRecord['joined']
}

function changesOf(reading: Reading, personId: number): PersonRecord['changes'] {
  const rows = prepared(
    reading.sqlite,
    `SELECT recorded_at AS at, field, before, NOT ${notUndone('person_change')} AS taken_back
     FROM person_change JOIN entry ON entry.id = entry_id
     WHERE person_change.person_id = ? AND field <> 'mergedIntoId' ORDER BY person_change.id DESC LIMIT 50`,
  ).all(personId) as { at: string; field: PersonField; before: string; taken_back: number }[]
  return rows.map(({ at, field, before, taken_back }) => ({
    at,
    words: wasBefore(field, JSON.parse(before)),
    takenBack: taken_back === 1,
  }))
}

function nameOfLanguage(code: unknown): string {
  return LANGUAGES.find((language) => language.code === code)?.name ?? ''
}

/** What a field held before it was changed. */
function wasBefore(field: PersonField, before: unknown): Message {
  const texts =
    field === 'roles'
      ? (before as PersonRole[]).map((role) => message(`people.role.${role}`))
      : [field === 'language' ? nameOfLanguage(before) : String(before ?? '')].filter((text) => text !== '')
  const kind = typeof before === 'boolean' ? (before ? 'yes' : 'no') : texts.length > 0 ? 'text' : 'nothing'
  return message('people.before', {
    field: message(`people.field.${field}`),
    kind,
    value: { list: texts },
  })
}
