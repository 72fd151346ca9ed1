import type { ListedPerson } from '../../contract/people-operations.ts'
import { fold } from '../../domain/shared/fold.ts'
import { notUndone } from '../../queries/measurements.ts'
import { prepared } from '../../queries/prepared.ts'
import type { Reads } from '../book/context.ts'
import { ROLES_OF_KEPT } from '../book/people.ts'

type Row = Omit<ListedPerson, 'roles' | 'alsoAs'> & {
  readonly roles: string | null
  readonly also_as: string
}

const RECORDS_OF_KEPT = '(SELECT kept.id UNION ALL SELECT id FROM person WHERE merged_into_id = kept.id)'

const counted = (table: string, column: string) =>
  `(SELECT count(*) FROM ${table} WHERE ${column} IN ${RECORDS_OF_KEPT} AND ${notUndone(table)})`

/** Everybody in the book, joined records under the one that is kept. */
export const listPeople: Reads<'person.list'> = (reading, input) => {
  const wanted = fold(input.text)
  const where = `kept.merged_into_id IS NULL
    AND (? = '' OR EXISTS (SELECT 1 FROM person AS found WHERE found.id IN ${RECORDS_OF_KEPT}
      AND ' ' || found.name_folded LIKE '% ' || ? || '%'))
    AND (? = '' OR EXISTS (SELECT 1 FROM person_role WHERE role = ? AND person_id IN ${RECORDS_OF_KEPT}))`
  const role = input.role ?? ''
  const values = [wanted, wanted, role, role]
  const rows = prepared(
    reading.sqlite,
    `SELECT kept.id AS personId, kept.name, kept.town, ${ROLES_OF_KEPT} AS roles,
       (SELECT json_group_array(name) FROM person WHERE merged_into_id = kept.id) AS also_as,
       ${counted('accession', 'donor_id')} AS gave, ${counted('withdrawal', 'person_id')} AS took,
       ${counted('seed_return', 'person_id')} AS broughtBack
     FROM person AS kept WHERE ${where} ORDER BY kept.name_folded, kept.id LIMIT ? OFFSET ?`,
  ).all(...values, input.limit, input.offset) as Row[]
  const total = prepared(reading.sqlite, `SELECT count(*) FROM person AS kept WHERE ${where}`)
  return {
    people: rows.map(({ roles, also_as, ...row }) => ({
      ...row,
      roles: (roles?.split(',') ?? []) as ListedPerson['roles'],
      alsoAs: JSON.parse(also_as),
    })),
    total: Number(total.pluck().get(...values)),
  }
}
