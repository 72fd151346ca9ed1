/** Bed for one plant of a crop that has no figure, square metres: herbs, flowers. Common practice, no source. */
const WITHOUT_FIGURE_M2 = 0.09

/** Bed for so many plants grown for seed, square metres; `bedArea`: of one plant, null where the crop table has no figure. */
export function bedFor(bedArea: number | null, plants: number): number {
  return plants * (bedArea ?? WITHOUT_FIGURE_M2)
}
