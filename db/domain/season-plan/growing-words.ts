import { type Message, message } from '../../messages/message.ts'
import type { CountedUnitName } from '../crops/counted-unit.ts'
import { isPiece, type PieceName } from '../crops/pieces.ts'
import { timesIn100 } from '../needs/assurance.ts'
import type { Breeding } from '../needs/population-goal.ts'
import { hoursOfIsolation, type IsolationMethod, type Pollination, toldHours } from './isolation-method.ts'
import type { SeedExtraction } from './seed-extraction.ts'

/** A sentence made elsewhere: not told yet, or told. */
type Said = Message | string

/** What a grower has to know of one variety, as it is planned. */
export interface GrowingFacts {
  readonly plants: number
  /** Seeds handed out for it; null where none can be. */
  readonly seeds: number | null
  /** The chance, 0 to 1, that all the plants come of them. */
  readonly chance: number
  /** Why none can be, lot by lot; empty where some can. */
  readonly noSeed: readonly Said[]
  /** Plants to expect where the seeds are the last and make no full regrowing; null where they make one. */
  readonly ofTheLast: number | null
  /** How to treat the last seeds, in sentences; empty where they are not the last. */
  readonly care: readonly Said[]
  readonly unit: CountedUnitName
  readonly areaM2: number
  readonly isolationM: number
  /** What is not known of how it crosses, in a sentence; '' where all is. */
  readonly unknown: Said
  /** Said where the garden's season is short for it; '' where it is not. */
  readonly shortSeason: Said
  /** What it crosses with, by everyday names. */
  readonly group: Said
  readonly way: IsolationMethod
  /** What is sown first and what follows, in a sentence; '' where nothing of the plan is kept apart by time. */
  readonly apartInTime: Said
  readonly pollination: Pollination
  readonly breeding: Breeding
  readonly biennial: boolean
  readonly extraction: SeedExtraction
}

/** One piece of advice under its heading, sentence by sentence. */
export interface Advice {
  readonly heading: Message
  readonly sentences: readonly Said[]
}

/**
 * What the grower of one variety is told: sowing, keeping apart, selecting, harvesting; of pieces planting, looking over, lifting.
 *
 * Common practice, no source; figures come from the plan.
 */
export function growingAdvice(facts: GrowingFacts): readonly Advice[] {
  const { care, biennial, ofTheLast, unit } = facts
  if (isPiece(unit)) return adviceOnPieces(facts, unit)
  const last = ofTheLast === null ? 'no' : 'yes'
  return [
    { heading: message('season.sheet.sow'), sentences: sow(facts) },
    ...(care.length === 0 ? [] : [{ heading: message('season.sheet.last-seeds'), sentences: care }]),
    { heading: message('season.sheet.apart'), sentences: apart(facts) },
    { heading: message('season.sheet.select'), sentences: select(facts) },
    {
      heading: message('season.sheet.harvest'),
      sentences: [message(`season.extraction.${facts.extraction}`), message('season.dry')],
    },
    ...(biennial
      ? [
          {
            heading: message('season.sheet.two-seasons'),
            sentences: [message('season.second-year', { last })],
          },
        ]
      : []),
  ]
}

function adviceOnPieces({ seeds, plants, areaM2, noSeed }: GrowingFacts, unit: PieceName): readonly Advice[] {
  const cm = Math.round(100 * Math.sqrt(areaM2 / plants))
  const given =
    seeds === null
      ? message('pieces.plant-none', { unit, why: { list: noSeed } })
      : message('pieces.plant', { pieces: { seeds, unit }, cm })
  return [
    { heading: message('pieces.sheet-plant'), sentences: [given] },
    { heading: message('pieces.sheet-look'), sentences: [message('pieces.look-over')] },
    { heading: message('pieces.sheet-lift'), sentences: [message(`pieces.lift-${unit}`, { plants })] },
  ]
}

function sow({ seeds, unit, plants, ofTheLast, shortSeason, areaM2, ...facts }: GrowingFacts): Said[] {
  const cm = Math.round(100 * Math.sqrt(areaM2 / plants))
  const season = shortSeason === '' ? [] : [shortSeason]
  if (seeds !== null && ofTheLast !== null) {
    const last = message('season.sow-last', { seeds: { seeds, unit }, expected: ofTheLast, plants, cm })
    return [last, ...season]
  }
  const raise = message('season.sow-raise', {
    plants,
    area: Number(areaM2.toFixed(areaM2 < 10 ? 1 : 0)),
    cm,
  })
  const sown =
    seeds === null
      ? [message('season.sow-none', { why: { list: facts.noSeed } }), raise]
      : [
          message('season.sow-given', { seeds: { seeds, unit } }),
          raise,
          message('season.sow-sure', { times: timesIn100(facts.chance) }),
        ]
  return [...sown, message('season.sow-fewer'), ...season]
}

/** Common practice, no source. */
function apart({
  way,
  pollination,
  plants,
  group,
  isolationM,
  apartInTime,
  breeding,
  unknown,
}: GrowingFacts): Said[] {
  if (way === 'covered') {
    const hours = toldHours(hoursOfIsolation(way, plants, pollination))
    return [message(`season.cover.${pollination}`), message('season.cover-work', { hours })]
  }
  return [
    message('season.apart', {
      group,
      planned: apartInTime === '' ? 'no' : 'yes',
      metres: Number(isolationM.toFixed(1)),
    }),
    ...(apartInTime === '' ? [] : [apartInTime]),
    ...(breeding === 'selfer' ? [message('season.selfed')] : []),
    ...(unknown === '' ? [] : [unknown]),
  ]
}

function select({ plants, ofTheLast, breeding }: GrowingFacts): Said[] {
  const all = ofTheLast !== null || breeding === 'selfer'
  return [
    message('season.rogue'),
    all ? message('season.save-rest') : message('season.save-many', { plants }),
  ]
}
