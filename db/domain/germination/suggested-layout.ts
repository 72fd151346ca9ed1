/** Seeds of each replicate of the usual tests, the smallest first: a paper towel, then two and four dishes. */
const USUAL: readonly (readonly number[])[] = [
  [10],
  [20],
  [25, 25],
  [25, 25, 25, 25],
  [50, 50, 50, 50],
  [100, 100, 100, 100],
]

/** The part of a lot that a test should not go beyond unasked. Common practice, no source. */
export const MOST_SPENT = 0.2

/**
 * The usual layout that is suggested for a lot of `available` seeds: the smallest that will probably decide, where it
 * costs no more than a fifth of the lot; else the largest that costs no more; else the smallest of all, or what is there.
 *
 * `smallestDeciding` is a number of seeds, null where no test decides.
 */
export function suggestedLayout(available: number, smallestDeciding: number | null): readonly number[] {
  if (available <= 0) return []
  const affordable = USUAL.filter((layout) => seedsOf(layout) <= available * MOST_SPENT)
  const deciding = affordable.find(
    (layout) => smallestDeciding !== null && seedsOf(layout) >= smallestDeciding,
  )
  return deciding ?? affordable.at(-1) ?? [Math.min(10, available)]
}

function seedsOf(layout: readonly number[]): number {
  return layout.reduce((sum, seeds) => sum + seeds, 0)
}
