import type { Handlers } from '../book/context.ts'
import { excursionCost } from './excursion-cost.ts'
import { getForecast } from './forecast-record.ts'
import { previewMoves } from './moves.ts'
import { forecastsLeft, holdForecasts, refreshForecasts } from './save-forecasts.ts'

/** The operations that this room answers. */
export const forecastOperations = {
  'forecast.refresh': refreshForecasts,
  'forecast.pause': holdForecasts,
  'place.preview-moves': previewMoves,
  'place.get-excursion-cost': excursionCost,
  'forecast.get': getForecast,
  'forecast.get-progress': forecastsLeft,
} satisfies Partial<Handlers>
