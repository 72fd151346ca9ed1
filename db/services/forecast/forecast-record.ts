import type { LotForecast as ShownForecast } from '../../contract/care-operations.ts'
import type { Untold } from '../../contract/told.ts'
import { addYears } from '../../domain/dates/day-arithmetic.ts'
import type { IsoDate } from '../../domain/dates/iso-date.ts'
import { wilsonInterval } from '../../domain/germination/wilson.ts'
import { curveOf } from '../../domain/viability/forecast.ts'
import type { PaceModel } from '../../domain/viability/pace-model.ts'
import { aliveTold, crossingTold, howSure, thresholdTold } from '../../domain/viability/words.ts'
import { message } from '../../messages/message.ts'
import type { Reads } from '../book/context.ts'
import { lotOrRefuse } from '../book/new-lot.ts'
import { settingsOf } from '../book/settings.ts'
import { PlacesAgeing } from '../storage/place-ageing.ts'
import { forecastLots, type LotForecast } from './lot-forecast.ts'
import { movesOf } from './moves.ts'

type Computed = Extract<LotForecast, { kind: 'forecast' }>

/** The forecast of a lot in figures and words, or why there is none. Refuses a lot that is not in the book. */
export const getForecast: Reads<'forecast.get'> = (reading, input) => {
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
    aliveWords: aliveTold(forecast.today, reading.today),
    threshold: threshold.part,
    thresholdWords: thresholdTold(threshold),
    line: threshold.of === 'all-seeds' ? threshold.part : threshold.part * forecast.start.middle,
    crossing: forecast.crossing,
    crossingWords: crossingTold(forecast.crossing, threshold, reading.today),
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

function basisOf({ constants }: PaceModel): Untold<ShownForecast>['basis'] {
  if (constants === null) {
    return {
      words: message('forecast.basis-rule'),
      source: message('forecast.basis-rule-source'),
      confidence: message('forecast.basis-common-practice'),
      note: message('forecast.basis-rule-note'),
    }
  }
  const { name, ke, cw, ch, cq, source, confidence, note } = constants
  return {
    words: message('forecast.basis-equation', {
      crop: name,
      ke: String(ke),
      cw: String(cw),
      ch: String(ch),
      cq: String(cq),
    }),
    source,
    confidence,
    note,
  }
}
