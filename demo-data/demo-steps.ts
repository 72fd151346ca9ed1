import { careStep } from './care-steps.ts'
import type { DemoStep } from './demo-book.ts'
import type { DemoTables, RowOf } from './demo-tables.ts'

/** Every entry of the demonstration by day; within a day seed comes in before it is measured and goes out. */
export function stepsOf(tables: DemoTables): DemoStep[] {
  const steps = [
    ...tables.figures.map(figureStep),
    ...giftSteps(tables.gifts),
    ...tables.returns.map(returnStep),
    ...tables.weights.map(weightStep),
    ...tables.germination.map(germinationStep),
    ...tables.splits.map(splitStep),
    ...tables.care.map(careStep),
    ...visitSteps(tables),
    ...tables['taken-back'].map(takenBackStep),
  ]
  return steps.toSorted((a, b) => a.on.localeCompare(b.on))
}

function figureStep({ where, cells }: RowOf<'figures'>): DemoStep {
  const { on, crop, lot, reason } = cells
  const own = { plantsToKeep: cells.plants, viabilityThreshold: cells.threshold }
  return {
    on,
    where,
    async write(book) {
      if (crop !== null)
        return book.write('crop.override', `figure-${crop}`, { cropId: crop, ...own, reason })
      const accessionId = book.idOf('accession', String(lot))
      const facts = { accessionId, ...own, regrowingsKept: cells.regrowings }
      return book.write('accession.override', `figure-${lot}`, facts)
    },
  }
}

/** Gifts of one donor on one day, in rows that follow each other, are one entry. */
function giftSteps(rows: readonly RowOf<'gifts'>[]): DemoStep[] {
  const visits: RowOf<'gifts'>[][] = []
  for (const row of rows) {
    const last = visits.at(-1)
    const same = last?.[0]?.cells.on === row.cells.on && last[0].cells.donor === row.cells.donor
    if (same) last.push(row)
    else visits.push([row])
  }
  return visits.map(giftStep)
}

function giftStep(rows: readonly RowOf<'gifts'>[]): DemoStep {
  const [first] = rows
  if (first === undefined) throw new Error('A visit without gifts')
  const { on, donor, lot } = first.cells
  return {
    on,
    where: first.where,
    async write(book) {
      const gifts = []
      for (const { cells } of rows) {
        gifts.push({
          variety: { varietyId: await book.variety(cells.variety) },
          harvest: cells.harvest,
          amount: cells.amount,
          sample: cells.sample,
          role: cells.role,
          placeId: cells.place === null ? null : await book.place(cells.place),
          grownAt: cells.grown_at,
          story: cells.story,
          terms: cells.terms,
          cautions: cells.cautions,
          cautionNote: cells.caution_note,
        })
      }
      const who = donor === null ? null : { personId: await book.person(donor) }
      const { taken } = await book.write('intake.record', `gift-${lot}`, {
        donor: who,
        receivedOn: on,
        gifts,
      })
      for (const [index, { accessionId, lotId }] of taken.entries()) {
        const name = String(rows[index]?.cells.lot)
        book.remember('lot', name, lotId)
        book.remember('accession', name, accessionId)
      }
    },
  }
}

function returnStep({ where, cells }: RowOf<'returns'>): DemoStep {
  const { lot, on, person, parent, visit, place } = cells
  return {
    on,
    where,
    async write(book) {
      const { taken } = await book.write('return.record', `return-${lot}`, {
        person: { personId: await book.person(person) },
        parentLotId: book.idOf('lot', parent),
        withdrawalId: visit === null ? null : book.idOf('visit', visit),
        receivedOn: on,
        harvest: cells.harvest,
        amount: cells.amount,
        sample: cells.sample,
        plantsGrown: cells.plants,
        grownAt: cells.grown_at,
        note: cells.note,
        placeId: place === null ? null : await book.place(place),
      })
      book.remember('lot', lot, taken.lotId)
    },
  }
}

function weightStep({ where, cells }: RowOf<'weights'>): DemoStep {
  const { lot, on, seeds_each: seeds, note } = cells
  const replicates = cells.grams.map((grams) => ({ seeds, grams }))
  return {
    on,
    where,
    write: (book) => {
      const facts = { lotId: book.idOf('lot', lot), on, replicates, note }
      return book.write('lot.weigh-seeds', `weight-${lot}-${on}`, facts)
    },
  }
}

function germinationStep({ where, cells }: RowOf<'germination'>): DemoStep {
  const { lot, on, tested, sprouted, from_stock: fromStock, note } = cells
  return {
    on,
    where,
    write: (book) => {
      const facts = { lotId: book.idOf('lot', lot), on, tested, sprouted, fromStock, note }
      return book.write('germination.record', `test-${lot}-${on}`, facts)
    },
  }
}

function splitStep({ where, cells }: RowOf<'splits'>): DemoStep {
  const { lot, on, from, amount, role, place, held_by: heldBy, note } = cells
  return {
    on,
    where,
    async write(book) {
      const placeId = place === null ? null : await book.place(place)
      const facts = { lotId: book.idOf('lot', from), on, amount, role, placeId, heldBy, note }
      const { newLotId } = await book.write('lot.split', `split-${lot}`, facts)
      book.remember('lot', lot, newLotId)
    },
  }
}

function visitSteps(tables: DemoTables): DemoStep[] {
  const lines = Map.groupBy(tables['visit-lines'], ({ cells }) => cells.visit)
  const visits = new Set(tables.visits.map(({ cells }) => cells.visit))
  const stray = tables['visit-lines'].find(({ cells }) => !visits.has(cells.visit))
  if (stray) throw new Error(`${stray.where}: there is no visit ‘${stray.cells.visit}’ in visits.csv.`)
  return tables.visits.map((row) => visitStep(row, lines.get(row.cells.visit) ?? []))
}

function visitStep({ where, cells }: RowOf<'visits'>, lines: readonly RowOf<'visit-lines'>[]): DemoStep {
  const { visit, on, person, purpose, promised, promised_by: promisedBy, note, despite, reason } = cells
  return {
    on,
    where,
    async write(book) {
      const { withdrawalId } = await book.write('withdrawal.record', `visit-${visit}`, {
        person: person === null ? null : { personId: await book.person(person) },
        on,
        purpose,
        lines: lines.map(({ cells: { lot, amount, note } }) => ({
          lotId: book.idOf('lot', lot),
          amount,
          note,
        })),
        promised,
        promisedBy,
        note,
        despite,
        reason,
      })
      book.remember('visit', visit, withdrawalId)
    },
  }
}

function takenBackStep({ where, cells }: RowOf<'taken-back'>): DemoStep {
  const { on, entry, reason } = cells
  return {
    on,
    where,
    write: (book) => {
      const facts = { entryId: book.idOf('entry', entry), reason }
      return book.write('entry.take-back', `back-${entry}`, facts)
    },
  }
}
