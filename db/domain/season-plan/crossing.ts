import { type Message, message } from '../../messages/message.ts'

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

/** A crossing group by the everyday names of its crops, its botanical name in brackets: 'Cabbage or Kale (species Brassica oleracea)'. */
export function toldGroup(group: string, crops: readonly string[]): Message | string {
  const names = crops.filter((name) => name !== group).toSorted()
  return names.length === 0
    ? group
    : message('season.group', { names: { list: names, as: 'or' }, species: group })
}
