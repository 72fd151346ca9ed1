import { nearestEquilibrium } from '../moisture/equilibrium.ts'
import type { ViabilityConstants } from './constants.ts'
import { type Keeping, type Pace, paceOf, refusal, ruleOfThumbGain } from './equation.ts'
import { meanStart, type PaceBasis, sigmaFromYears } from './prior.ts'

/** What of a crop decides how its seed ages. */
export interface AgeingCrop {
  readonly cropId: string
  /** Of the seed viability equation; null where none were published. */
  readonly constants: ViabilityConstants | null
  /** Oil as a part of dry weight; null where not known. */
  readonly oil: number | null
  /** Years that its seed keeps, from and to; null where no list has it. */
  readonly years: readonly [number, number] | null
  /** The least part alive that it is usually let be sold with, 0 to 1. */
  readonly leastSold: number
}

/** How seed of a crop ages: by its own constants, or by a rule of thumb. */
export interface PaceModel {
  readonly basis: PaceBasis
  /** The constants; null: rule of thumb. */
  readonly constants: ViabilityConstants | null
  /**
   * How many times faster than the constants say it ages in a room by the years that it is said to keep, as a natural
   * logarithm; null where no list has it, or the pace is computed by those years anyway.
   */
  readonly logPaceByYears: number | null
  pace(keeping: Keeping): Pace
}

/** Oil of seed that no figure is known for: little, as in most. Judgement. */
const USUAL_OIL = 0.05
/** A dry living room, by which lists of years are taken to go. Judgement: they do not say. */
const ROOM = { celsius: 20, humidity: 0.5 } as const

/** Moisture of seed at rest with the air of a place, percent of fresh weight; the room's where a figure is not known. */
export function moistureInAir(oil: number | null, air: { celsius?: number; humidity?: number } = {}): number {
  const { celsius = ROOM.celsius, humidity = ROOM.humidity } = air
  return nearestEquilibrium({ humidity, temperature: celsius, oil: oil ?? USUAL_OIL }).wetPercent
}

/** How a crop's seed ages, or null where neither constants nor years are known: then nothing is forecast. */
export function paceModelOf(crop: AgeingCrop): PaceModel | null {
  const { constants } = crop
  const room: Keeping = { celsius: ROOM.celsius, moisture: moistureInAir(crop.oil) }
  if (constants !== null) {
    const basis = constants.confidence === 'seen' ? 'constants-seen' : 'constants-from-memory'
    const pace = (keeping: Keeping) => paceOf(constants, keeping, crop.oil)
    return { basis, constants, logPaceByYears: logPaceByYears(crop, pace(room)), pace }
  }
  if (crop.years === null) return null
  const inRoom = sigmaFromYears(crop.years, meanStart(crop.leastSold))
  return {
    basis: 'rule-of-thumb',
    constants: null,
    logPaceByYears: null,
    pace(keeping) {
      const because = refusal(keeping)
      if (because !== null) return { kind: 'refused', because }
      return { kind: 'pace', sigmaDays: inRoom * ruleOfThumbGain(keeping, room), remarks: [] }
    },
  }
}

function logPaceByYears({ years, leastSold }: AgeingCrop, inRoom: Pace): number | null {
  if (years === null || inRoom.kind === 'refused') return null
  return Math.log(inRoom.sigmaDays / sigmaFromYears(years, meanStart(leastSold)))
}
