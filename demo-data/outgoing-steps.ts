import type { DemoStep } from './demo-book.ts'
import type { DemoTables, RowOf } from './demo-tables.ts'

export function visitSteps(tables: DemoTables): DemoStep[] {
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

export function waiveStep({ where, cells: { on, visit, reason } }: RowOf<'waivers'>): DemoStep {
  return {
    on,
    where,
    write: (book) => {
      const facts = { withdrawalId: book.idOf('visit', visit), reason }
      return book.write('promise.waive', `waive-${visit}`, facts)
    },
  }
}

export function seasonListStep({ where, cells: { on, lots, note } }: RowOf<'season-lists'>): DemoStep {
  return {
    on,
    where,
    write: (book) => {
      const chosen = lots.map((lot) => book.idOf('accession', lot))
      return book.write('season-list.create', `season-list-${on}`, { chosen, note })
    },
  }
}

export function gardenStep({ where, cells }: RowOf<'gardens'>): DemoStep {
  const { on, name, grower, near, near_m: metres } = cells
  return {
    on,
    where,
    async write(book) {
      return book.write('site.change', `garden-${name.toLowerCase().replace(/[^a-z]+/g, '-')}`, {
        name,
        growerId: grower === null ? null : await book.person(grower),
        areaM2: cells.area_m2,
        mostVarieties: cells.most,
        seasonDays: cells.frost_free_days,
        takes: cells.takes,
        place: { eastM: cells.east_m, northM: cells.north_m },
        neighbours: near.map((cropId, at) => ({ cropId, metres: metres[at] ?? 0 })),
        note: cells.note,
      })
    },
  }
}
