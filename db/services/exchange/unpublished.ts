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
  const rowsOf = (text: string, ...bound: unknown[]) =>
    prepared(sqlite, text)
      .raw()
      .all(...bound)
  const limits = limitsOfAccessions(sqlite, 'all')
  const without = (what: 'publishStory' | 'publishName') =>
    [...limits].filter(([, each]) => !each[what]).map(([accessionId]) => accessionId)
  const untold = new Set<Kept | undefined>(without('publishStory'))
  const offered = (rowsOf(OFFERED) as [number, string, number | null, number | null][]).map(
    ([giftId, facts, donorId, accessionId]) => ({ giftId, donorId, accessionId, ...limitsIn(facts) }),
  )
  const untoldGifts = new Set<Kept | undefined>(
    offered
      .filter(({ publishStory, accessionId }) => !publishStory || untold.has(accessionId))
      .map(({ giftId }) => giftId),
  )
  const unnamedDonors = offered.filter(({ publishName }) => !publishName).map(({ donorId }) => donorId)
  const unnamed = new Set<Kept | undefined>(
    rowsOf(GIVERS, JSON.stringify(without('publishName')), JSON.stringify(unnamedDonors)).flat() as number[],
  )
  const changes: Readonly<Record<string, Change>> = {
    accession: (row) => (untold.has(row['id']) ? { ...row, story: '', donor_words: '' } : row),
    accession_passport: (row) => (row['code'] === 'REMARKS' && untold.has(row['accession_id']) ? null : row),
    gift: (row) => (untoldGifts.has(row['id']) ? { ...row, facts: withoutStory(String(row['facts'])) } : row),
    // An answer is there for whoever asks twice, which nobody does of a package.
    entry: (row) => {
      const { gift, undoable } = JSON.parse(String(row['answer'])) as Answer
      return untoldGifts.has(gift?.giftId) || unnamed.has(gift?.donorId)
        ? { ...row, answer: JSON.stringify({ undoable }) }
        : row
    },
    person: (row) => {
      if (!unnamed.has(row['id'])) return row
      const name = `Person ${row['id']}`
      return { ...row, name, name_folded: fold(name), town: '', credit_as: '', note: '' }
    },
    person_contact: (row) => (unnamed.has(row['person_id']) ? null : row),
    person_change: (row) => (unnamed.has(row['person_id']) ? null : row),
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

interface Answer {
  readonly gift?: { readonly giftId: number; readonly donorId: number | null }
  readonly undoable: boolean
}

/** Every record of those who gave some accessions, and of some people: those joined into one as well. */
const GIVERS = `SELECT other.id FROM person AS giver JOIN person AS other
    ON coalesce(other.merged_into_id, other.id) = coalesce(giver.merged_into_id, giver.id)
  WHERE giver.id IN (SELECT donor_id FROM accession WHERE id IN (SELECT value FROM json_each(?)))
    OR giver.id IN (SELECT value FROM json_each(?))`

/** Gifts as they were offered, with the accessions that they became. */
const OFFERED = `SELECT gift.id, facts, donor_id, accession_id FROM gift
  LEFT JOIN gift_event ON gift_id = gift.id AND kind = 'accepted' LEFT JOIN lot ON lot.id = lot_id`

/** The terms that an offered gift was noted with. */
function limitsIn(facts: string): GiftLimits {
  const { limits } = JSON.parse(facts) as { readonly limits?: unknown }
  return GiftLimits.parse(limits ?? {})
}

/** JSON in which nothing is told of the seed, however deep. */
function withoutStory(json: string): string {
  return JSON.stringify(JSON.parse(json, (name, value) => (TOLD_OF_IT.has(name) ? '' : value)))
}
