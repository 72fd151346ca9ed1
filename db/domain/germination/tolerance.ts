import { chiSquaredTail, homogeneity, type ReplicateShare } from './homogeneity.ts'

/**
 * The largest range allowed between replicates of 100 seeds: mean per cent, range of four, range of two.
 *
 * 7 CFR 201.55, 2015 edition, as printed (seen). A mean of 50 or less uses the row of 101 - mean. Null: not printed.
 */
const LARGEST_RANGE: readonly (readonly [mean: number, ofFour: number, ofTwo: number | null])[] = [
  [99, 5, null],
  [98, 6, null],
  [97, 7, 6],
  [96, 8, 6],
  [95, 9, 7],
  [94, 10, 8],
  [93, 10, 8],
  [92, 11, 9],
  [91, 11, 9],
  [90, 12, 9],
  [89, 12, 10],
  [88, 13, 10],
  [87, 13, 11],
  [86, 14, 11],
  [85, 14, 11],
  [84, 14, 11],
  [83, 15, 12],
  [82, 15, 12],
  [81, 15, 12],
  [80, 16, 13],
  [79, 16, 13],
  [78, 16, 13],
  [77, 17, 13],
  [76, 17, 13],
  [75, 17, 14],
  [74, 17, 14],
  [73, 17, 14],
  [72, 18, 14],
  [71, 18, 14],
  [70, 18, 14],
  [69, 18, 14],
  [68, 18, 15],
  [67, 18, 15],
  [66, 19, 15],
  [65, 19, 15],
  [64, 19, 15],
  [63, 19, 15],
  [62, 19, 15],
  [61, 19, 15],
  [60, 19, 15],
  [59, 19, 15],
  [58, 19, 15],
  [57, 19, 15],
  [56, 19, 15],
  [55, 20, 15],
  [54, 20, 16],
  [53, 20, 16],
  [52, 20, 16],
  [51, 20, 16],
]

/** How well the replicates of a test agree, and by what that is judged. */
export type Tolerance =
  | {
      readonly kind: 'within' | 'outside'
      readonly by: 'table'
      /** Per cent, rounded as the table is entered. */
      readonly mean: number
      /** Highest less lowest replicate, points of per cent. */
      readonly range: number
      readonly allowed: number
    }
  | {
      readonly kind: 'within' | 'outside'
      readonly by: 'chi-squared'
      /** The chance of differences at least as large where only chance is at work. */
      readonly chance: number
    }
  | { readonly kind: 'not-judged'; readonly because: 'one-replicate' | 'too-few-seeds' | 'all-alike' }

/** The table's own level, one test in forty called outside by chance (Miles 1963, as restated in da Silva 2020: seen). */
const CHANCE_OF_THE_TABLE = 0.025
/** Each replicate should expect this many of either kind for X2 to mean much (the usual rule, from memory). */
const LEAST_EXPECTED = 5

/**
 * Judges whether replicates agree well enough, or the test should be repeated.
 *
 * Two or four replicates of 100: the published table. The table says nothing of other sizes; there the replicates are
 * compared by Pearson's X2 at the table's level, where there are seeds enough for it, and else not judged at all.
 */
export function judgeTolerance(replicates: readonly ReplicateShare[]): Tolerance {
  if (replicates.length < 2) return { kind: 'not-judged', because: 'one-replicate' }
  return byTable(replicates) ?? byChiSquared(replicates)
}

function byTable(replicates: readonly ReplicateShare[]): Tolerance | null {
  const four = replicates.length === 4
  if ((!four && replicates.length !== 2) || replicates.some(({ sown }) => sown !== 100)) return null
  const germinated = replicates.map((one) => one.germinated)
  const mean = Math.round(germinated.reduce((sum, count) => sum + count, 0) / replicates.length)
  const row = LARGEST_RANGE.find(([of]) => of === (mean > 50 ? mean : 101 - mean))
  const allowed = four ? row?.[1] : row?.[2]
  if (allowed === undefined || allowed === null) return null
  const range = Math.max(...germinated) - Math.min(...germinated)
  return { kind: range > allowed ? 'outside' : 'within', by: 'table', mean, range, allowed }
}

function byChiSquared(replicates: readonly ReplicateShare[]): Tolerance {
  const sown = replicates.reduce((sum, one) => sum + one.sown, 0)
  const germinated = replicates.reduce((sum, one) => sum + one.germinated, 0)
  const rarer = Math.min(germinated, sown - germinated)
  if (rarer === 0) return { kind: 'not-judged', because: 'all-alike' }
  const fewest = Math.min(...replicates.map((one) => (one.sown * rarer) / sown))
  if (fewest < LEAST_EXPECTED) return { kind: 'not-judged', because: 'too-few-seeds' }
  const { chiSquared, degrees } = homogeneity(replicates)
  const chance = chiSquaredTail(chiSquared, degrees)
  return { kind: chance < CHANCE_OF_THE_TABLE ? 'outside' : 'within', by: 'chi-squared', chance }
}
