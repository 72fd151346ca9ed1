import { type Message, message, type Temperature } from '../../messages/message.ts'
import type { ClimateTotals } from './climate-sum.ts'
import { type ClimateLimits, HIGHEST_SUM } from './limits.ts'
import type { ClimateReading } from './reading.ts'
import type { ThawCycles } from './thaw-cycles.ts'

/** A temperature to be told, from hundredths of a degree. */
export function warmth(cc: number): Temperature {
  return { celsius: Math.round(cc / 10) / 10 }
}

/** Whole percent to be told, from per mille of relative humidity. */
export function wholePercent(pm: number): number {
  return Math.round(pm / 10)
}

/** What the air of a place is like: '21.4 °C, 38 % humidity'. */
export function airInWords({
  temperatureCc,
  humidityPm,
}: Pick<ClimateReading, 'temperatureCc' | 'humidityPm'>): Message {
  return message('storage.air', {
    celsius: warmth(temperatureCc),
    damp: humidityPm === null ? 'unread' : 'read',
    humidity: wholePercent(humidityPm ?? 0),
  })
}

/** What limits ask for. */
export function limitsInWords({ highestCc, highestPm, highestSum }: ClimateLimits): Message {
  const list = [
    highestSum === null ? [] : [message('storage.limit-sum', { sum: highestSum })],
    highestCc === null ? [] : [message('storage.limit-warmth', { celsius: warmth(highestCc) })],
    highestPm === null ? [] : [message('storage.limit-damp', { humidity: wholePercent(highestPm) })],
  ].flat()
  return list.length === 0 ? message('storage.limits-none') : message('storage.limits', { limits: { list } })
}

/** What the readings of some time say, a sentence each. */
export function totalsInWords(totals: ClimateTotals, limits: ClimateLimits): Message[] {
  const { lowestCc, meanCc, highestCc, meanPm, highestPm, meanSum, shareOutside } = totals
  const temperature = message('storage.temperatures', {
    mean: warmth(meanCc),
    lowest: warmth(lowestCc),
    highest: warmth(highestCc),
  })
  const humidity =
    meanPm === null || highestPm === null
      ? message('storage.humidity-not-read')
      : message('storage.humidities', { mean: wholePercent(meanPm), highest: wholePercent(highestPm) })
  const sum =
    limits.highestSum === null || meanSum === null
      ? []
      : [message('storage.sum', { sum: Math.round(meanSum), most: HIGHEST_SUM })]
  const needed = limits.highestSum !== null || limits.highestPm !== null
  const unread = needed && meanPm === null ? [message('storage.humidity-wanted')] : []
  const outside = shareOutside === null ? [] : [outsideInWords(shareOutside)]
  return [temperature, humidity, ...sum, ...unread, ...outside]
}

function outsideInWords(share: number): Message {
  if (share === 0) return message('storage.never-beyond')
  return share < 0.01
    ? message('storage.hardly-beyond')
    : message('storage.beyond', { share: { part: share } })
}

/** What the cycles of a freezer that melts its own ice mean for seed. */
export function thawsInWords({ peaks, everyHours, riseCc }: ThawCycles): Message {
  return message('storage.thaws', { rise: warmth(riseCc), hours: Math.round(everyHours), peaks })
}

/** What a time beyond the limits cost some lots: points of the percentage alive. */
export interface ExcursionCost {
  readonly lots: number
  readonly least: number
  readonly middle: number
  readonly most: number
}

/** What a time beyond the limits cost, and what is not in the figure. */
export function excursionCostInWords({ lots, least, middle, most }: ExcursionCost): Message {
  if (lots === 0) return message('storage.cost-no-lot')
  if (most < 0.1) return message('storage.cost-little', { lots })
  if (lots === 1) return message('storage.cost-of-one', { points: tenths(most) })
  return message('storage.cost', { lots, least: tenths(least), middle: tenths(middle), most: tenths(most) })
}

function tenths(points: number): number {
  return Math.round(10 * points) / 10
}
