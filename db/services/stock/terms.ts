import { refuse } from '../../contract/refusal.ts'
import { limitsTold, sameLimits } from '../../domain/terms/gift-limits.ts'
import { message } from '../../messages/message.ts'
import { limitsOfAccession } from '../../queries/gift-limits.ts'
import { rowWith } from '../../queries/rows.ts'
import { accession } from '../../schema/stock-tables.ts'
import type { Writes } from '../book/context.ts'
import { writeLimits } from '../book/gift-limits.ts'

/** Sets the terms of an accession. Refuses one that is not in the book, and terms that hold already. */
export const changeTerms: Writes<'accession.change-terms'> = (writing, { accessionId, limits }) => {
  const row = rowWith(writing.sqlite, accession, { id: accessionId })
  if (!row) refuse('not-found', message('stock.no-accession'), { field: 'accessionId' })
  if (sameLimits(limits, limitsOfAccession(writing.sqlite, row.id)))
    refuse('nothing-to-change', message('terms.same', { accession: row.number }), { field: 'limits' })
  writeLimits(writing, row.id, limits)
  return {
    limitsTold: limitsTold(limits, writing.today),
    said: message('terms.changed', { accession: row.number, who: message(`terms.who.${limits.share}`) }),
    undoable: true,
  }
}
