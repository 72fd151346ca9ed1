/**
 * The plants that cross with one another: the species, so that beet and chard are one, the cabbages one, the squashes three.
 *
 * The first two words of the botanical name; what stands behind them in brackets is a form of it. The everyday name where
 * the botanical one is not known: what else it crosses with cannot be told then.
 */
export function crossingGroup({
  species,
  crop,
}: {
  readonly species: string
  readonly crop: string
}): string {
  if (species === '') return crop
  return species.split(' ').slice(0, 2).join(' ')
}

/** A crossing group by the everyday names of its crops, its botanical name in brackets: 'Cabbage or Kale (Brassica oleracea)'. */
export function groupInWords(group: string, crops: readonly string[]): string {
  const names = crops.filter((name) => name !== group).toSorted()
  if (names.length === 0) return group
  const last = names.at(-1) ?? ''
  return `${names.length === 1 ? last : `${names.slice(0, -1).join(', ')} or ${last}`} (${group})`
}
