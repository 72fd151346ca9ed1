import { type GiftLimits, NO_LIMITS } from '../domain/terms/gift-limits.ts'
import type { Sqlite } from '../migrations/connection.ts'
import { accessionTerms, lot } from '../schema/stock-tables.ts'
import { columns, pick, select } from './columns.ts'
import { notUndone } from './measurements.ts'

const LIMITS = columns(
  pick(
    accessionTerms,
    'accessionId',
    'share',
    'publishStory',
    'publishName',
    'mayBeSold',
    'agreement',
    'agreementEnds',
    'communityLabel',
    'communityLink',
  ),
)

/** The terms in force of some accessions, or of all; one of which nothing was said is left out. */
export function limitsOfAccessions(
  sqlite: Sqlite,
  accessionIds: readonly number[] | 'all',
): Map<number, GiftLimits> {
  const of =
    accessionIds === 'all'
      ? 'accession_terms'
      : 'json_each(@wanted) AS wanted CROSS JOIN accession_terms ON accession_id = wanted.value'
  const rows = select(
    sqlite,
    LIMITS,
    (list) => `SELECT ${list} FROM ${of} WHERE ${notUndone('accession_terms')} ORDER BY accession_terms.id`,
  ).all(...(accessionIds === 'all' ? [] : [{ wanted: JSON.stringify(accessionIds) }]))
  // Of several the latest stays.
  return new Map(
    rows.map(({ accessionId, publishStory, publishName, mayBeSold, ...terms }) => [
      accessionId,
      {
        ...terms,
        publishStory: publishStory === 1,
        publishName: publishName === 1,
        mayBeSold: mayBeSold === 1,
      },
    ]),
  )
}

/** The terms in force of what some lots are of, each once. */
export function limitsOfLots(sqlite: Sqlite, lotIds: readonly number[]): GiftLimits[] {
  const accessionIds = select(
    sqlite,
    columns({ id: lot.accessionId }),
    (list) => `SELECT DISTINCT ${list} FROM json_each(?) AS wanted CROSS JOIN lot ON lot.id = wanted.value`,
  ).all(JSON.stringify(lotIds))
  return [
    ...limitsOfAccessions(
      sqlite,
      accessionIds.map(({ id }) => id),
    ).values(),
  ]
}

/** The terms in force of one accession: no limits where nothing was said. */
export function limitsOfAccession(sqlite: Sqlite, accessionId: number): GiftLimits {
  return limitsOfAccessions(sqlite, [accessionId]).get(accessionId) ?? NO_LIMITS
}
