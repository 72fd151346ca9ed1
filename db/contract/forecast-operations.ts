import { z } from 'zod'
import { keeps, reads } from './operation.ts'

export const forecastOperations = {
  'forecast.refresh': keeps(
    'Works out some of the forecasts that no longer hold, and tells how many are left.',
    z.strictObject({ limit: z.int().min(1).max(5_000).default(200) }),
    z.object({ reckoned: z.int(), left: z.int() }),
  ),
  'forecast.left': reads(
    'Tells how many forecasts are still to be worked out, of how many lots.',
    z.strictObject({}),
    z.object({ left: z.int(), lots: z.int() }),
  ),
} as const
