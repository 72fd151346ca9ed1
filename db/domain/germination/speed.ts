/** Seeds that germinated by a count: days since sowing, and how many were new then. */
export interface DayCount {
  readonly day: number
  readonly germinated: number
}

/** How fast seed germinated, in days. Seed is booked on the day that somebody looked, so rare counts read slow. */
export interface GerminationSpeed {
  /** Mean germination time. */
  readonly meanDays: number
  /** Days until half of what germinated had done so; null where half came at the very first count. */
  readonly halfDays: number | null
}

/** Germinated seeds added up day by day, in order of day; counts of one day together. */
export function cumulativeCurve(counts: readonly DayCount[]): readonly DayCount[] {
  const byDay = new Map<number, number>()
  for (const { day, germinated } of counts) byDay.set(day, (byDay.get(day) ?? 0) + germinated)
  let sum = 0
  return [...byDay]
    .toSorted(([one], [other]) => one - other)
    .map(([day, germinated]) => {
      sum += germinated
      return { day, germinated: sum }
    })
}

/**
 * Mean germination time, the sum of n t / the sum of n (Ellis & Roberts 1981, Seed Science and Technology 9:373-409,
 * formula from memory), and the time to half of the final germination, drawn straight between the two counts around it
 * (Coolbear, Francis & Grierson 1984: N is reached at (N + 1) / 2; formula seen in the manual of germinationmetrics).
 *
 * Null where nothing germinated.
 */
export function germinationSpeed(counts: readonly DayCount[]): GerminationSpeed | null {
  const curve = cumulativeCurve(counts)
  const total = curve.at(-1)?.germinated ?? 0
  if (total === 0) return null
  const weighted = counts.reduce((sum, { day, germinated }) => sum + day * germinated, 0)
  const half = (total + 1) / 2
  const after = curve.findIndex(({ germinated }) => germinated >= half)
  const upper = curve[after]
  const lower = curve[after - 1]
  const halfDays =
    upper === undefined || lower === undefined
      ? null
      : lower.day +
        ((half - lower.germinated) * (upper.day - lower.day)) / (upper.germinated - lower.germinated)
  return { meanDays: weighted / total, halfDays }
}
