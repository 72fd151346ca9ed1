import { assertNever } from '../shared/assert-never.ts'
import type { ClimateTotals } from './climate-sum.ts'
import { type ClimateLimits, HIGHEST_SUM, type PlaceAim } from './limits.ts'
import type { ThawCycles } from './thaw-cycles.ts'

/** '21.4 °C', from hundredths of a degree. */
export function celsiusInWords(cc: number): string {
  return `${(Math.round(cc / 10) / 10).toFixed(1).replace('-', '−')} °C`
}

/** '38 %', from per mille of relative humidity. */
export function humidityInWords(pm: number): string {
  return `${Math.round(pm / 10)} %`
}

/** What limits ask for, in a keeper's words. */
export function limitsInWords({ highestCc, highestPm, highestSum }: ClimateLimits): string {
  const parts = [
    highestSum === null
      ? []
      : [`degrees F and percent of humidity together at most ${highestSum} (common practice)`],
    highestCc === null ? [] : [`at most ${celsiusInWords(highestCc)}`],
    highestPm === null ? [] : [`at most ${humidityInWords(highestPm)} humidity`],
  ].flat()
  return parts.length === 0 ? 'nothing to keep to yet' : parts.join(', ')
}

/** What an aim stands for. */
export function aimInWords(aim: PlaceAim): string {
  switch (aim) {
    case 'short-term':
      return 'for a few years: cool and dry'
    case 'medium-term':
      return 'for years: a fridge at 10 °C or less'
    case 'long-term':
      return 'for decades: a freezer at about −18 °C, seed dried to 5 to 8 %'
    case 'none':
      return 'for nothing in particular'
    default:
      return assertNever(aim, 'An aim has no words yet')
  }
}

/** What the readings of some time say, a sentence each. */
export function totalsInWords(totals: ClimateTotals, limits: ClimateLimits): string[] {
  const { lowestCc, meanCc, highestCc, meanPm, highestPm, meanSum, shareOutside } = totals
  const humidity =
    meanPm === null || highestPm === null
      ? 'Humidity was not read.'
      : `Humidity ${humidityInWords(meanPm)} on average, ${humidityInWords(highestPm)} at most.`
  const temperature = `${celsiusInWords(meanCc)} on average, between ${celsiusInWords(lowestCc)} and ${celsiusInWords(highestCc)}.`
  const sum =
    limits.highestSum === null || meanSum === null
      ? []
      : [
          `Degrees F and percent of humidity add up to ${Math.round(meanSum)} on average; ${HIGHEST_SUM} or less is the rule for such a place (common practice).`,
        ]
  const needed = limits.highestSum !== null || limits.highestPm !== null
  const unread =
    needed && meanPm === null ? ['Without humidity nobody can say whether it is dry enough.'] : []
  const outside = shareOutside === null ? [] : [outsideInWords(shareOutside)]
  return [temperature, humidity, ...sum, ...unread, ...outside]
}

function outsideInWords(share: number): string {
  if (share === 0) return 'Never beyond its limits in that time.'
  const percent = 100 * share
  const shown = percent < 1 ? 'less than 1' : Math.round(percent)
  return `Beyond its limits for ${shown} % of the measured time.`
}

/** What the cycles of a freezer that melts its own ice mean for seed. */
export function thawsInWords({ peaks, everyHours, riseCc }: ThawCycles): string {
  const hours = Math.round(everyHours)
  return `It warms by ${(riseCc / 100).toFixed(1)} °C every ${hours} hours or so, ${peaks} times in these readings, as a frost-free freezer does to melt its ice. Seed in a sealed jar feels less of it; a freezer without this is better for decades (common practice).`
}

/** What a time beyond the limits cost some lots: points of the percentage alive. */
export interface ExcursionCost {
  readonly lots: number
  readonly least: number
  readonly middle: number
  readonly most: number
}

/** What a time beyond the limits cost, and what is not in the figure. */
export function excursionCostInWords({ lots, least, middle, most }: ExcursionCost): string {
  if (lots === 0) return 'No lot that lies there now lay there then.'
  const which = lots === 1 ? 'the lot that lay' : `the ${lots} lots that lay`
  const one = (points: number) => `${Math.round(10 * points) / 10}`
  const cost =
    most < 0.1
      ? 'less than a tenth of a point of what is alive'
      : lots === 1
        ? `${one(most)} points of what is alive`
        : `${one(least)} to ${one(most)} points of what is alive, ${one(middle)} in the middle`
  return `It cost ${which} there then ${cost}, by the forecast. Frost on moist seed and water that settled on cold seed are not in it.`
}
