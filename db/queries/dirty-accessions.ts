import type { Sqlite } from '../migrations/connection.ts'
import { expression, selectValue } from './columns.ts'
import { prepared } from './prepared.ts'

const ID = expression<number>('id')

/** Stands for every accession: something changed that may concern them all. */
export const EVERY_ACCESSION = 0

const OF_LOT = '(SELECT accession_id FROM lot WHERE id = NEW.lot_id)'

/** What touches an accession, so that what was computed of it no longer holds. */
const WATCHED: readonly (readonly [change: string, accession: string])[] = [
  ['INSERT ON lot', 'NEW.accession_id'],
  ['UPDATE ON lot', 'NEW.accession_id'],
  ['UPDATE OF computed_on ON lot_forecast', OF_LOT],
  ['UPDATE ON accession', 'NEW.id'],
  ['INSERT ON accession_policy', 'NEW.accession_id'],
  [
    'UPDATE OF undoes_id ON entry',
    '(SELECT accession_id FROM accession_policy WHERE entry_id = NEW.undoes_id)',
  ],
  ...['seed_return', 'germination_result', 'seed_weight', 'movement', 'lot_parent'].flatMap((table) =>
    ['INSERT', 'UPDATE'].map((change) => [`${change} ON ${table}`, OF_LOT] as const),
  ),
  ...[
    'UPDATE ON withdrawal',
    'UPDATE OF crop_id ON variety',
    'UPDATE ON crop',
    'UPDATE ON collection',
    'UPDATE OF kind, parent_id ON storage_place',
    'DELETE ON lot',
    'DELETE ON accession',
  ].map((change) => [change, `${EVERY_ACCESSION}`] as const),
]

/** Begins to watch which accessions are touched by what is written over a connection that is in no transaction. */
export function watchAccessions(sqlite: Sqlite): void {
  sqlite.exec('CREATE TEMP TABLE dirty_accession (id INTEGER NOT NULL)')
  for (const [index, [change, accession]] of WATCHED.entries()) {
    sqlite.exec(
      `CREATE TEMP TRIGGER touched_${index} AFTER ${change.replace(' ON ', ' ON main.')} BEGIN
         INSERT INTO dirty_accession SELECT ${accession}
         WHERE ${accession} <> coalesce((SELECT id FROM dirty_accession ORDER BY rowid DESC LIMIT 1), -1);
       END`,
    )
  }
}

/** The accessions that were touched since they were last forgotten, of a connection that is watched. */
export function dirtyAccessions(sqlite: Sqlite): Set<number> {
  return new Set(selectValue(sqlite, ID, (id) => `SELECT ${id} FROM dirty_accession`).all())
}

export function forgetTouched(sqlite: Sqlite): void {
  prepared(sqlite, 'DELETE FROM dirty_accession').run()
}

/** Every accession that has a lot, in order. */
export function accessionsWithLots(sqlite: Sqlite): number[] {
  return selectValue(
    sqlite,
    ID,
    (id) => `SELECT ${id} FROM accession WHERE EXISTS (SELECT 1 FROM lot WHERE accession_id = accession.id)`,
  ).all()
}
