import type { Tally, TestRecord } from '../../../db/contract/germination-operations.ts'
import { CATEGORIES, type Category, tallied } from '../../../db/domain/germination/germination-test.ts'
import { wholeNumber } from '../../shared/card-form/whole-number.ts'

/** What is typed into the cells of a count, by category and replicate; an empty cell is 0. */
export type TypedCells = Readonly<Record<string, string>>

/** Nothing taken out. */
export const NONE: Tally = { normal: 0, abnormal: 0, hard: 0, fresh: 0, dead: 0 }

/** The name of a cell: 'normal.0' is the first replicate's normal seedlings. */
export function cellName(category: Category, replicate: number): string {
  return `${category}.${replicate}`
}

/** A key for a replicate's column: replicates have no name but their place. */
export function columnKey(replicate: number): string {
  return `replicate-${replicate + 1}`
}

/** The tallies that are typed, or the name of the first cell that is not a whole number. */
export function readCells(
  cells: TypedCells,
  replicates: number,
): { readonly tallies: Tally[] } | { readonly unreadable: string } {
  const tallies: Tally[] = []
  for (let replicate = 0; replicate < replicates; replicate += 1) {
    const tally = { ...NONE }
    for (const category of CATEGORIES) {
      const name = cellName(category, replicate)
      const typed = cells[name]?.trim() ?? ''
      const seeds = typed === '' ? 0 : wholeNumber(typed)
      if (seeds === null) return { unreadable: name }
      tally[category] = seeds
    }
    tallies.push(tally)
  }
  return { tallies }
}

/** The cells of a count as it was written down, to be corrected. */
export function cellsOf(tallies: readonly Tally[]): TypedCells {
  return Object.fromEntries(
    tallies.flatMap((tally, replicate) =>
      CATEGORIES.filter((category) => tally[category] > 0).map((category) => [
        cellName(category, replicate),
        String(tally[category]),
      ]),
    ),
  )
}

/** What is typed; where nothing is yet, the count of that day, so that nobody writes over it without seeing it. */
export function cellsShown(typed: TypedCells, counts: TestRecord['counts'], on: string): TypedCells {
  const counted = counts.find((count) => count.on === on)
  return counted === undefined || Object.keys(typed).length > 0 ? typed : cellsOf(counted.replicates)
}

/** Seeds of each replicate that no count has taken out yet, leaving out the count of the day that is being typed. */
export function stillThere(test: Pick<TestRecord, 'counts' | 'replicates'>, on: string): number[] {
  const counted = test.counts.filter((count) => count.on !== on)
  return test.replicates.map(
    ({ sown }, index) =>
      sown -
      counted.reduce((sum, { replicates }) => {
        const tally = replicates[index]
        return tally === undefined ? sum : sum + tallied(tally)
      }, 0),
  )
}
