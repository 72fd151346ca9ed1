import type { Result } from '../../contract/contract.ts'
import { climateTotals, SEASONS, type Season, seasonOf } from '../../domain/climate/climate-sum.ts'
import { airInWords } from '../../domain/climate/climate-words.ts'
import { type ClimateLimits, limitsOf } from '../../domain/climate/limits.ts'
import { type Message, message } from '../../messages/message.ts'
import { readingsOfPlace } from '../../queries/place-readings.ts'
import type { Reading, Reads } from '../book/context.ts'
import { placeOrRefuse } from '../book/places.ts'
import { shownSum } from './place-climate.ts'

type Compared = Result<'storage.compare'>['places'][number]
type Sum = NonNullable<Compared['sum']>

/** A place as it is shown, with what was measured there by season. */
interface Measured {
  readonly shown: Compared
  readonly sums: ReadonlyMap<Season, Sum>
}

/** Fewer readings than this, or fewer seasons in common, say little of a year. Common practice, no source. */
const FEW_READINGS = 20

export const comparePlaces: Reads<'storage.compare'> = (reading, input) => {
  const limits = limitsOf(input.aim, { highestCc: null, highestPm: null })
  const places = [...new Set(input.placeIds)].map((placeId, index) => {
    const { path } = placeOrRefuse(reading, placeId, `placeIds.${index}`)
    return comparedPlace(reading, placeId, path, limits)
  })
  return { places: places.map(({ shown }) => shown), words: verdict(places) }
}

function comparedPlace(reading: Reading, placeId: number, path: string, limits: ClimateLimits): Measured {
  const readings = readingsOfPlace(reading.sqlite, placeId)
  const totals = climateTotals(readings, limits)
  if (totals === null)
    return {
      shown: { placeId, path, sum: null, seasons: [], words: message('storage.state-no-readings') },
      sums: new Map(),
    }
  const bySeason = Map.groupBy(readings, seasonOf)
  const sums = new Map(
    SEASONS.flatMap((season) => {
      const sum = climateTotals(bySeason.get(season) ?? [], limits)
      return sum === null ? [] : [[season, shownSum(sum)] as const]
    }),
  )
  return {
    shown: {
      placeId,
      path,
      sum: shownSum(totals),
      seasons: [...sums].map(([season, sum]) => ({ months: seasonInWords(season), sum })),
      words: message('storage.compared', {
        air: airInWords({ temperatureCc: totals.meanCc, humidityPm: totals.meanPm }),
        readings: totals.readings < FEW_READINGS ? 'few' : 'enough',
      }),
    },
    sums,
  }
}

function seasonInWords(season: Season): Message {
  return message(`storage.season-${season}`)
}

/** Which keeps its limits longest over the seasons that all of them were measured in; the cooler and drier where they tie. */
function verdict(places: readonly Measured[]): Message {
  const measured = places.filter(({ sums }) => sums.size > 0)
  if (measured.length < 2) return message('storage.compare-two')
  const common = SEASONS.filter((season) => measured.every(({ sums }) => sums.has(season)))
  if (common.length === 0) return message('storage.compare-seasons')
  const worth = (place: Measured) => {
    const sums = common.flatMap((season) => place.sums.get(season) ?? [])
    const mean = (of: (sum: Sum) => number) => sums.reduce((total, sum) => total + of(sum), 0) / sums.length
    return {
      outside: mean((sum) => sum.shareOutside ?? 0),
      heat: mean((sum) => sum.meanSum ?? sum.mean * 1.8 + 32),
      damp: sums.every((sum) => sum.meanSum !== null),
    }
  }
  if (new Set(measured.map((place) => worth(place).damp)).size > 1) return message('storage.compare-humidity')
  const ranked = measured.toSorted((one, other) => {
    const [a, b] = [worth(one), worth(other)]
    return a.outside - b.outside || a.heat - b.heat
  })
  const place = ranked[0]?.shown.path ?? ''
  const seen = { list: common.map(seasonInWords) }
  const left = SEASONS.filter((season) => !common.includes(season))
  if (left.length === 0) return message('storage.compare-best', { place, seen })
  const unseen = { list: left.map(seasonInWords) }
  return message('storage.compare-best-partly', { place, seen, unseen, count: left.length })
}
