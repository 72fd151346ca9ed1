import { GiftLimits } from '../../contract/terms-operations.ts'
import { fold } from '../../domain/shared/fold.ts'
import { limitsOfAccessions } from '../../queries/gift-limits.ts'
import { prepared } from '../../queries/prepared.ts'
import type { Kept, WholeTable } from '../../queries/whole-tables.ts'
import type { Reading } from '../book/context.ts'

type Row = Record<string, Kept>
type Change = (row: Row) => Row | null

/** What a giver told of the seed, by the names of the contract. */
const TOLD_OF_IT = new Set(['story', 'donorWords'])

/**
 * Rows of whole tables without what givers do not want published: the stories of their gifts, wherever the book keeps them,
 * and who they are and how they are reached. Everything that names a row still does.
 */
export function unpublishedLeftOut({ sqlite }: Reading) {
  const limits = limitsOfAccessions(sqlite, 'all')
  const without = (what: 'publishStory' | 'publishName') =>
    [...limits].filter(([, each]) => !each[what]).map(([accessionId]) => accessionId)
  const untold = new Set(without('publishStory'))
  const unnamed = new Set(
    prepared(sqlite, GIVERS)
      .pluck()
      .all(JSON.stringify(without('publishName'))),
  )
  const untoldGifts = new Set(
    (prepared(sqlite, OFFERED).raw().all() as [number, string, number | null][])
      .filter(([, facts, accessionId]) => untold.has(accessionId ?? 0) || !mayTell(facts))
      .map(([giftId]) => giftId),
  )
  const isOfGiver = (id: Kept | undefined) => unnamed.has(id)
  const changes: Readonly<Record<string, Change>> = {
    accession: (row) => (untold.has(Number(row['id'])) ? { ...row, story: '', donor_words: '' } : row),
    accession_passport: (row) =>
      row['code'] === 'REMARKS' && untold.has(Number(row['accession_id'])) ? null : row,
    gift: (row) =>
      untoldGifts.has(Number(row['id'])) ? { ...row, facts: withoutStory(String(row['facts'])) } : row,
    entry: (row) => {
      const { gift } = JSON.parse(String(row['answer'])) as { readonly gift?: { readonly giftId: number } }
      return untoldGifts.has(gift?.giftId ?? 0)
        ? { ...row, answer: withoutStory(String(row['answer'])) }
        : row
    },
    person: (row) => {
      if (!isOfGiver(row['id'])) return row
      const name = `Person ${row['id']}`
      return { ...row, name, name_folded: fold(name), town: '', credit_as: '', note: '' }
    },
    person_contact: (row) => (isOfGiver(row['person_id']) ? null : row),
    person_change: (row) => (isOfGiver(row['person_id']) ? null : row),
  }
  return ({ name, columns }: WholeTable, rows: readonly Kept[][]): readonly Kept[][] => {
    const change = changes[name]
    if (change === undefined) return rows
    return rows.flatMap((cells) => {
      const row = change(Object.fromEntries(columns.map((column, at) => [column.name, cells[at] ?? null])))
      return row === null ? [] : [columns.map((column) => row[column.name] ?? null)]
    })
  }
}

/** Every record of those who gave some accessions: those joined into one as well. */
const GIVERS = `SELECT other.id FROM json_each(?) AS wanted JOIN accession ON accession.id = wanted.value
  JOIN person AS giver ON giver.id = accession.donor_id
  JOIN person AS other ON coalesce(other.merged_into_id, other.id) = coalesce(giver.merged_into_id, giver.id)`
/** Gifts as they were offered, with the accessions that they became. */
const OFFERED = `SELECT gift.id, facts, accession_id FROM gift
  LEFT JOIN gift_event ON gift_id = gift.id AND kind = 'accepted' LEFT JOIN lot ON lot.id = lot_id`

function mayTell(facts: string): boolean {
  const { limits } = JSON.parse(facts) as { readonly limits?: unknown }
  return GiftLimits.parse(limits ?? {}).publishStory
}

/** JSON in which nothing is told of the seed, however deep. */
function withoutStory(json: string): string {
  return JSON.stringify(JSON.parse(json, (name, value) => (TOLD_OF_IT.has(name) ? '' : value)))
}
