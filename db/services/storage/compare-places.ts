import type { Result } from '../../contract/contract.ts'
import { climateTotals, SEASONS, seasonOf } from '../../domain/climate/climate-sum.ts'
import { celsiusInWords, humidityInWords } from '../../domain/climate/climate-words.ts'
import { type ClimateLimits, limitsOf } from '../../domain/climate/limits.ts'
import { readingsOfPlace } from '../../queries/place-readings.ts'
import type { Reading, Reads } from '../book/context.ts'
import { placeOrRefuse } from '../book/places.ts'
import { shownSum } from './place-climate.ts'

type Compared = Result<'storage.compare'>['places'][number]

/** Fewer readings than this, or fewer seasons in common, say little of a year. Common practice, no source. */
const FEW_READINGS = 20

export const comparePlaces: Reads<'storage.compare'> = (reading, input) => {
  const limits = limitsOf(input.aim, { highestCc: null, highestPm: null })
  const places = [...new Set(input.placeIds)].map((placeId, index) => {
    const { path } = placeOrRefuse(reading, placeId, `placeIds.${index}`)
    return comparedPlace(reading, placeId, path, limits)
  })
  return { places, words: verdict(places) }
}

function comparedPlace(reading: Reading, placeId: number, path: string, limits: ClimateLimits): Compared {
  const readings = readingsOfPlace(reading.sqlite, placeId)
  const totals = climateTotals(readings, limits)
  if (totals === null) return { placeId, path, sum: null, seasons: [], words: 'no readings yet' }
  const bySeason = Map.groupBy(readings, seasonOf)
  const damp = totals.meanPm === null ? '' : `, ${humidityInWords(totals.meanPm)} humidity`
  const few = totals.readings < FEW_READINGS ? '; few readings, so take it as a hint' : ''
  return {
    placeId,
    path,
    sum: shownSum(totals),
    seasons: SEASONS.flatMap((months) => {
      const sum = climateTotals(bySeason.get(months) ?? [], limits)
      return sum === null ? [] : [{ months, sum: shownSum(sum) }]
    }),
    words: `${celsiusInWords(totals.meanCc)}${damp} on average${few}`,
  }
}

/** Which keeps its limits longest over the seasons that all of them were measured in; the cooler and drier where they tie. */
function verdict(places: readonly Compared[]): string {
  const measured = places.filter(({ sum }) => sum !== null)
  if (measured.length < 2) return 'Two places at least must be measured before they can be compared.'
  const common = SEASONS.filter((months) =>
    measured.every(({ seasons }) => seasons.some((season) => season.months === months)),
  )
  if (common.length === 0)
    return 'They were measured in different seasons: nothing can be said of which is better yet.'
  const worth = (place: Compared) => {
    const sums = place.seasons.filter(({ months }) => common.some((name) => name === months))
    const mean = (of: (season: (typeof sums)[number]) => number) =>
      sums.reduce((total, season) => total + of(season), 0) / sums.length
    return {
      outside: mean(({ sum }) => sum.shareOutside ?? 0),
      heat: mean(({ sum }) => sum.meanSum ?? sum.mean * 1.8 + 32),
      damp: sums.every(({ sum }) => sum.meanSum !== null),
    }
  }
  if (new Set(measured.map((place) => worth(place).damp)).size > 1)
    return 'Humidity was read in some of them only. Read it in all before choosing.'
  const ranked = measured.toSorted((one, other) => {
    const [a, b] = [worth(one), worth(other)]
    return a.outside - b.outside || a.heat - b.heat
  })
  const unseen = SEASONS.filter((months) => !common.includes(months))
  const seen = `over ${common.join(', ')}`
  const but =
    unseen.length === 0
      ? ''
      : ` ${unseen.join(', ')} ${unseen.length === 1 ? 'was' : 'were'} not measured in all of them.`
  return `${ranked[0]?.path} keeps seed best ${seen}.${but}`
}
