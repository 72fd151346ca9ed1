import type { LotForecast as ShownForecast } from '../../contract/care-operations.ts'
import type { ParsedInput, Result } from '../../contract/contract.ts'
import { addYears } from '../../domain/dates/day-arithmetic.ts'
import type { IsoDate } from '../../domain/dates/iso-date.ts'
import { wilsonInterval } from '../../domain/germination/wilson.ts'
import { curveOf } from '../../domain/viability/forecast.ts'
import type { PaceModel } from '../../domain/viability/pace-model.ts'
import { aliveInWords, crossingInWords, howSure, thresholdInWords } from '../../domain/viability/words.ts'
import type { Reading } from '../book/context.ts'
import { lotOrRefuse } from '../book/new-lot.ts'
import { settingsOf } from '../book/settings.ts'
import { PlacesAgeing } from '../storage/place-ageing.ts'
import { forecastLots, type LotForecast } from './lot-forecast.ts'
import { movesOf } from './moves.ts'

type Computed = Extract<LotForecast, { kind: 'forecast' }>

/** The forecast of a lot in figures and words, or why there is none. Refuses a lot that is not in the book. */
export function getForecast(reading: Reading, input: ParsedInput<'forecast.get'>): Result<'forecast.get'> {
  lotOrRefuse(reading, input.lotId, 'lotId')
  const places = new PlacesAgeing(reading)
  const [computed] = forecastLots(reading, [input.lotId], settingsOf(reading), places)
  if (computed === undefined) throw new Error(`No forecast of lot ${input.lotId}`)
  if (computed.kind === 'refused') return { kind: 'refused', because: computed.because }
  const { forecast, ageing, threshold, model } = computed
  return {
    kind: 'forecast',
    on: reading.today,
    start: ageing.start,
    alive: forecast.today,
    aliveWords: aliveInWords(forecast.today),
    threshold: threshold.part,
    thresholdWords: thresholdInWords(threshold),
    line: threshold.of === 'all-seeds' ? threshold.part : threshold.part * forecast.start.middle,
    crossing: forecast.crossing,
    crossingWords: crossingInWords(forecast.crossing, threshold, reading.today),
    chanceBelow: forecast.chanceBelow,
    curve: curveOf(forecast, ageing, reading.today, drawnUntil(forecast.crossing.late, reading.today)),
    tests: testsOf(computed),
    howSure: howSure(
      forecast,
      model,
      {
        harvest: computed.harvestKnown,
        keeping: computed.measured,
        usualDays: computed.usualDays,
        yearsWeighedIn: computed.yearsWeighedIn,
        merged: computed.merged,
      },
      computed.remarks,
    ),
    basis: basisOf(model),
    places: movesOf(reading, computed, places),
  }
}

/** The curve goes on until the crossing is over, two years at least and thirty at most. */
function drawnUntil(late: IsoDate | null, today: IsoDate): IsoDate {
  const [least, most] = [addYears(today, 2), addYears(today, 30)]
  if (late === null || late > most) return most
  return late < least ? least : late
}

function testsOf({ forecast: { learnt } }: Computed): ShownForecast['tests'] {
  return [...learnt.used, ...learnt.setAside]
    .map((test) => {
      const [low, high] = wilsonInterval(test.sprouted, test.tested)
      const { on, tested, sprouted } = test
      return {
        on,
        tested,
        sprouted,
        low,
        middle: sprouted / tested,
        high,
        setAside: learnt.setAside.includes(test),
      }
    })
    .toSorted((one, other) => (one.on < other.on ? -1 : 1))
}

function basisOf({ constants }: PaceModel): ShownForecast['basis'] {
  if (constants === null) {
    return {
      words:
        'rule of thumb: the years that seed of this crop is said to keep; 5 °C cooler or 1 point drier doubles them',
      source: 'the crop table; guides that quote Harrington',
      confidence: 'common practice',
      note: 'half is taken to be alive when those years are over: no list says what its years mean',
    }
  }
  const { name, ke, cw, ch, cq, source, confidence, note } = constants
  return {
    words: `seed viability equation of Ellis and Roberts, constants of ${name}: KE ${ke}, CW ${cw}, CH ${ch}, CQ ${cq}`,
    source,
    confidence,
    note,
  }
}
