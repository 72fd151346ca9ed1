import { eq } from 'drizzle-orm'
import { refuse } from '../../contract/refusal.ts'
import { countsByState, NEED_STATES, type NeedState } from '../../domain/needs/need.ts'
import { message } from '../../messages/message.ts'
import { lotsOfAccessions } from '../../queries/lot-rows.ts'
import { accession } from '../../schema/stock-tables.ts'
import type { Reading, Reads, Writes } from '../book/context.ts'
import { livingStockOf } from '../book/living-stock.ts'
import { settingsOf } from '../book/settings.ts'
import { type Judgement, judgements } from '../regrow/judgements.ts'

/** How every accession of the collection stands, in the order in which they came. */
function everyStanding(reading: Reading): Judgement[] {
  return [...judgements.all(reading).values()].sort((a, b) => a.accessionId - b.accessionId)
}

/** The accessions in one state. */
export function accessionsInState(reading: Reading, state: NeedState): number[] {
  return everyStanding(reading)
    .filter((standing) => standing.state === state)
    .map(({ accessionId }) => accessionId)
}

export const listNeeds: Reads<'accession.list-states'> = (reading, input) => {
  const inState = Map.groupBy(everyStanding(reading), ({ state }) => state)
  const idsIn = (state: NeedState) => (inState.get(state) ?? []).map(({ accessionId }) => accessionId)
  const wanted = (input.state === undefined ? NEED_STATES : [input.state]).flatMap(idsIn)
  const page = wanted.slice(input.offset, input.offset + input.limit)
  const lotsOf = Map.groupBy(lotsOfAccessions(reading.sqlite, page), (row) => row.accessionId)
  const policy = settingsOf(reading)
  return {
    counts: countsByState((state) => idsIn(state).length),
    total: wanted.length,
    accessions: page.flatMap((accessionId) => {
      const lots = lotsOf.get(accessionId) ?? []
      return lots.slice(0, 1).map((first) => ({
        accessionId,
        accessionNumber: first.accessionNumber,
        variety: first.variety,
        crop: first.crop,
        stock: livingStockOf(lots, policy),
      }))
    }),
  }
}

export const overrideAccession: Writes<'accession.change-policy'> = (writing, input) => {
  const row = writing.db.select().from(accession).where(eq(accession.id, input.accessionId)).get()
  if (!row) refuse('not-found', message('stock.no-accession'), { field: 'accessionId' })
  writing.db
    .update(accession)
    .set({
      ownGrade: input.grade === undefined ? row.ownGrade : input.grade,
      ownPlants: input.plantsToKeep === undefined ? row.ownPlants : input.plantsToKeep,
      ownRegrowings: input.regrowingsKept === undefined ? row.ownRegrowings : input.regrowingsKept,
      ownAssurance: input.assurance === undefined ? row.ownAssurance : input.assurance,
      ownThreshold: input.viabilityThreshold === undefined ? row.ownThreshold : input.viabilityThreshold,
    })
    .where(eq(accession.id, row.id))
    .run()
  const stock = livingStockOf(lotsOfAccessions(writing.sqlite, [row.id]), settingsOf(writing))
  return { stock, said: message('stock.keep-changed', { accession: row.number }), undoable: false }
}
