import type { Handlers } from '../book/context.ts'
import { mergePeople, updatePerson } from './change-person.ts'
import { namesGoingOut } from './names-going-out.ts'
import { listPeople } from './person-list.ts'
import { erasePerson, exportPerson, personTraces } from './person-privacy.ts'
import { getPerson } from './person-record.ts'

/** The operations that this room answers. */
export const peopleOperations = {
  'person.list': listPeople,
  'person.get': getPerson,
  'person.export': exportPerson,
  'person.list-traces': personTraces,
  'person.list-names-in-texts': namesGoingOut,
  'person.change': updatePerson,
  'person.merge': mergePeople,
  'person.erase': erasePerson,
} satisfies Partial<Handlers>
