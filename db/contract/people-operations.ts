import { z } from 'zod'
import {
  Day,
  Id,
  LotName,
  PersonFacts,
  PersonFields,
  PersonRole,
  PersonShown,
  pageOf,
  Search,
} from './fields.ts'
import { reads, writes } from './operation.ts'
import { Told } from './told.ts'
import { VisitOut } from './withdrawal-operations.ts'

export const PersonLine = z.object({
  personId: Id,
  name: z.string(),
  town: z.string(),
  roles: z.array(z.string()),
  tellApart: Told.describe('what tells two people of one name apart: town, first gift'),
})

const ListedPerson = z.object({
  personId: Id,
  name: z.string(),
  town: z.string(),
  roles: z.array(PersonRole),
  alsoAs: z.array(z.string()).describe('names of records that were joined into this one'),
  gave: z.int().describe('accessions'),
  took: z.int().describe('visits'),
  broughtBack: z.int().describe('lots'),
})
export type ListedPerson = z.infer<typeof ListedPerson>

const MergedRecord = z.object({
  ...PersonShown,
  entryId: Id.describe('the entry that joined it, for taking it back'),
})

export const PersonRecord = z.object({
  ...PersonShown,
  mayWrite: z.boolean(),
  consentOn: z.string().nullable().describe('when they agreed to be written to'),
  since: z.string().describe('when they came into the book'),
  roles: z.array(PersonRole),
  gave: z.array(
    z.object({ accessionId: Id, lotId: Id, number: z.string(), variety: z.string(), receivedOn: z.string() }),
  ),
  took: z.array(VisitOut),
  broughtBack: z.array(z.object({ ...LotName, variety: z.string(), on: z.string(), words: Told })),
  joined: z.array(MergedRecord).describe('other records of the same person, shown in this one'),
  changes: z.array(z.object({ at: z.string(), words: Told, takenBack: z.boolean() })),
})
export type PersonRecord = z.infer<typeof PersonRecord>

export const peopleOperations = {
  'person.search': reads(
    'Finds people by a few letters of their name, accents or not.',
    Search,
    z.object({ people: z.array(PersonLine) }),
  ),
  'person.create': writes(
    'Adds a person.',
    { ...PersonFields, roles: z.array(PersonRole).default([]) },
    { personId: Id },
  ),
  'person.list': reads(
    'Lists everybody in the book by name, narrowed by letters and role, a page at a time.',
    z.strictObject({
      text: z.string().max(200).default(''),
      role: PersonRole.optional(),
      ...pageOf(500, 100),
    }),
    z.object({ people: z.array(ListedPerson), total: z.int() }),
  ),
  'person.get': reads(
    'Shows a person with what they gave, took, promised and brought back. A joined record shows the kept one.',
    z.strictObject({ personId: Id }),
    PersonRecord,
  ),
  'person.change': writes(
    'Changes what is known of a person; what is left out stays, and what was before is kept.',
    {
      personId: Id,
      ...z.object(PersonFacts).partial().shape,
      consentOn: Day.optional().describe('when they agreed to be written to; today where left out'),
      roles: z.array(PersonRole).optional(),
    },
    {},
  ),
  'person.merge': writes(
    'Joins two records of one person: the kept one is shown wherever the other stood.',
    { keepId: Id, joinId: Id },
    {},
  ),
  'person.export': reads(
    'Gives all that the file holds on a person, as a JSON file to hand over.',
    z.strictObject({ personId: Id }),
    z.object({ fileName: z.string(), text: z.string() }),
  ),
  'person.list-traces': reads(
    'Lists the texts that may still speak of a person after erasing, since a word in them may be a plant’s or somebody else’s.',
    z.strictObject({ personId: Id }),
    z.object({
      traces: z.array(z.object({ traceId: z.string(), where: Told, text: z.string() })),
      total: z.int(),
    }),
  ),
  'person.erase': writes(
    'Takes out who a person was and keeps what they gave and took, under a number. Only a backup brings it back.',
    {
      personId: Id,
      mask: z
        .array(z.string().max(500))
        .max(500)
        .default([])
        .describe('traces in which the person is taken out as well, by their ids'),
    },
    { personId: Id },
  ),
}
