import { type Message, message } from '../../messages/message.ts'
import type { CountedUnitName } from '../crops/counted-unit.ts'
import { isPiece } from '../crops/pieces.ts'
import { chanceOfPlants, timesIn100 } from './assurance.ts'
import { breedingOf } from './population-goal.ts'
import type { SowableLot, SowingAdvice } from './sowing.ts'
import { toldSetAside } from './urgency.ts'

/** Who took seed in so many years may still have some. Common practice, no source. */
export const PEOPLE_SINCE_YEARS = 6

export interface RescueFacts {
  readonly lots: readonly SowableLot[]
  /** What to sow of them; null where nothing is left that lives. */
  readonly sow: SowingAdvice | null
  /** Seeds here that are not counted: in quarantine, or the reference sample. */
  readonly setAside: number
  readonly plants: number
  /** The least plants whose seed is worth saving, from the crop table. */
  readonly fewestPlants: number
  readonly emergence: number
  readonly matingSystem: string | null
  readonly family: string
  readonly hardSeeded: boolean
  readonly unit: CountedUnitName
  /** Who may have the variety still: donor, holders of duplicates, members who grew it. */
  readonly mayHaveIt: readonly (Message | string)[]
}

/** What to do with the last seeds, in sentences: for the keeper, and the part of it that whoever sows them needs. */
export interface RescueAdvice {
  readonly forKeeper: readonly Message[]
  readonly forGrower: readonly Message[]
}

/** Advice for an accession with too few living seeds for a full regrowing. */
export function adviseRescue(facts: RescueFacts): RescueAdvice {
  const { sow, unit, plants, emergence, fewestPlants: fewest } = facts
  const ask = whomToAsk(facts.mayHaveIt)
  const held = facts.lots.reduce((sum, { seeds }) => sum + seeds, 0)
  const [from] = sow?.lots ?? []
  const lot = facts.lots.find(({ lotId }) => lotId === from?.lotId)
  if (sow === null || lot === undefined) return { forKeeper: [noneToSow(facts, held), ask], forGrower: [] }
  const { seeds } = sow
  if (isPiece(unit))
    return { forKeeper: [message('pieces.plant-all', { unit, count: held }), ask], forGrower: [] }
  const forGrower = [
    ...preTreatment(facts),
    message('needs.sow-indoors'),
    message(`needs.small.${breedingOf(facts.matingSystem)}`),
  ]
  return {
    forKeeper: [
      message('needs.sow-last', { seeds: { seeds, unit }, lot: lot.lotNumber, back: held - seeds }),
      message('needs.expect', {
        expected: Math.round(sow.expected),
        plants,
        seeds,
        viability: Number(lot.viability.toFixed(2)),
        emergence,
        fewest,
        times: timesIn100(chanceOfPlants(fewest, [{ ...lot, seeds }], emergence)),
      }),
      ...forGrower,
      ask,
    ],
    forGrower,
  }
}

function noneToSow({ setAside, unit }: RescueFacts, held: number): Message {
  if (setAside > 0) return message('needs.none-free', { unit, aside: toldSetAside(setAside, unit) })
  return held > 0
    ? message('needs.all-dead', { count: held, seeds: { seeds: held, unit } })
    : message('needs.none-here', { unit })
}

/** Common practice, no source: imbibition damage of dry pulses and scarification are taught everywhere. */
function preTreatment({ family, hardSeeded }: RescueFacts): readonly Message[] {
  return [
    ...(family === 'Fabaceae' ? [message('needs.damp-pulses')] : []),
    ...(hardSeeded ? [message('needs.nick-hard')] : []),
  ]
}

function whomToAsk(people: RescueFacts['mayHaveIt']): Message {
  return people.length === 0
    ? message('needs.ask-region')
    : message('needs.ask-them', { people: { list: people } })
}
