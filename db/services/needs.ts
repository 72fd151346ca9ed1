import { eq } from 'drizzle-orm'
import type { ParsedInput, Value } from '../contract/contract.ts'
import type { LivingStock } from '../contract/fields.ts'
import { refuse } from '../contract/refusal.ts'
import { NEED_STATES, type NeedState } from '../domain/needs/need.ts'
import { everyLotForNeeds, type LotRow, lotsOfAccessions } from '../queries/lot-rows.ts'
import { accession } from '../schema/stock-tables.ts'
import type { Reading, Writing } from './context.ts'
import { livingStockOf } from './living-stock.ts'
import { settingsOf } from './settings.ts'

interface Standing {
  readonly first: LotRow
  readonly stock: LivingStock
}

/** How every accession of the collection stands, worst first and by number within a state. */
function everyStanding(reading: Reading): Standing[] {
  const policy = settingsOf(reading)
  const standings: Standing[] = []
  let lots: LotRow[] = []
  const close = () => {
    if (lots[0] !== undefined) standings.push({ first: lots[0], stock: livingStockOf(lots, policy) })
    lots = []
  }
  for (const row of everyLotForNeeds(reading.sqlite)) {
    if (lots[0] !== undefined && lots[0].accession_id !== row.accession_id) close()
    lots.push(row)
  }
  close()
  const rank = (standing: Standing) => NEED_STATES.indexOf(standing.stock.state)
  return standings.toSorted((a, b) => rank(a) - rank(b) || a.first.accession_id - b.first.accession_id)
}

/** The accessions in one state. */
export function accessionsInState(reading: Reading, state: NeedState): number[] {
  return everyStanding(reading)
    .filter((standing) => standing.stock.state === state)
    .map((standing) => standing.first.accession_id)
}

export function listNeeds(reading: Reading, input: ParsedInput<'need.list'>): Value<'need.list'> {
  const all = everyStanding(reading)
  const counts = { rescue: 0, regrow: 0, watch: 0, 'well-stocked': 0 }
  for (const { stock } of all) counts[stock.state] += 1
  const wanted = input.state === undefined ? all : all.filter(({ stock }) => stock.state === input.state)
  return {
    counts,
    total: wanted.length,
    accessions: wanted.slice(input.offset, input.offset + input.limit).map(({ first, stock }) => ({
      accessionId: first.accession_id,
      accessionNumber: first.accession_number,
      variety: first.variety,
      crop: first.crop,
      stock,
    })),
  }
}

export function overrideAccession(
  writing: Writing,
  input: ParsedInput<'accession.override'>,
): Omit<Value<'accession.override'>, 'entryId'> {
  const row = writing.db.select().from(accession).where(eq(accession.id, input.accessionId)).get()
  if (!row) refuse('not-found', 'That accession is not in the book.', { field: 'accessionId' })
  writing.db
    .update(accession)
    .set({
      ownPlants: input.plantsToKeep === undefined ? row.ownPlants : input.plantsToKeep,
      ownRegrowings: input.regrowingsKept === undefined ? row.ownRegrowings : input.regrowingsKept,
      ownThreshold: input.viabilityThreshold === undefined ? row.ownThreshold : input.viabilityThreshold,
    })
    .where(eq(accession.id, row.id))
    .run()
  const stock = livingStockOf(lotsOfAccessions(writing.sqlite, [row.id]), settingsOf(writing))
  return { stock, said: `Changed what ${row.number} has to keep`, undoable: false }
}
