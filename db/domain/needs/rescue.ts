import { countInWords, type Manner, numberInWords } from '../amounts/in-words.ts'
import type { CountedUnit } from '../crops/counted-unit.ts'
import { chanceInWords, chanceOfPlants, type SownSeed } from './assurance.ts'
import { type Breeding, breedingOf } from './population-goal.ts'
import type { SowableLot, SowingAdvice } from './sowing.ts'
import { setAsideInWords } from './urgency.ts'

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
  readonly unit: CountedUnit
  readonly manner: Manner
  /** Who may have the variety still: donor, holders of duplicates, members who grew it. */
  readonly mayHaveIt: readonly string[]
}

/** What to do with the last seeds, in sentences: for the keeper, and the part of it that whoever sows them needs. */
export interface RescueAdvice {
  readonly forKeeper: readonly string[]
  readonly forGrower: readonly string[]
}

/** Advice for an accession with too few living seeds for a full regrowing. */
export function adviseRescue(facts: RescueFacts): RescueAdvice {
  const { sow, unit, manner } = facts
  const ask = whomToAsk(facts.mayHaveIt)
  const held = facts.lots.reduce((sum, { seeds }) => sum + seeds, 0)
  const [from] = sow?.lots ?? []
  const lot = facts.lots.find(({ lotId }) => lotId === from?.lotId)
  if (sow === null || lot === undefined) return { forKeeper: [noneToSow(facts, held), ask], forGrower: [] }
  const number = (value: number, decimals = 0) => numberInWords(value, manner, decimals)
  const forGrower = [
    ...preTreatment(facts),
    'Sow indoors in clean, moist, not wet mix, one by one, and prick out: last seeds are not sown in the open.',
    SMALL_POPULATION[breedingOf(facts.matingSystem)],
  ]
  return {
    forKeeper: [
      `Sow ${countInWords(sow.seeds, unit, manner)} of ${lot.lotNumber}, the lot with most living seed, and keep ${number(held - sow.seeds)} back for a second try.`,
      `Expect about ${number(Math.round(sow.expected))} of the ${number(facts.plants)} plants: ${number(sow.seeds)} x ${number(lot.viability, 2)} alive x ${number(facts.emergence, 4)} emergence. ${atLeast(facts, { ...lot, seeds: sow.seeds })}`,
      ...forGrower,
      ask,
    ],
    forGrower,
  }
}

/** The chance of the fewest plants whose seed is worth saving. */
function atLeast({ fewestPlants, emergence, manner }: RescueFacts, sown: SownSeed): string {
  const plants = countInWords(fewestPlants, { one: 'plant', many: 'plants' }, manner)
  const chance = chanceOfPlants(fewestPlants, [sown], emergence)
  return `At least ${plants}, the fewest whose seed is worth saving: ${chanceInWords(chance)}.`
}

function noneToSow({ setAside, unit, manner }: RescueFacts, held: number): string {
  if (setAside > 0)
    return `No ${unit.one} is free to sow here, but ${setAsideInWords(setAside, unit, manner)}`
  if (held > 0) return `${countInWords(held, unit, manner)} lie here, and none is thought to be alive.`
  return `No ${unit.one} is left to sow here.`
}

const SMALL_POPULATION: Readonly<Record<Breeding, string>> = {
  selfer:
    'A few plants carry a self-fertile variety on, but the rarer types among them go: save seed of every plant.',
  mixed:
    'From a few plants the variety narrows: save seed of every plant, in equal parts, and grow more next time.',
  outcrosser:
    'From so few plants a cross-pollinated variety weakens by inbreeding: pollinate by hand between all of them, save seed of every plant in equal parts, and look for other seed of it to mix in.',
}

/** Common practice, no source: imbibition damage of dry pulses and scarification are taught everywhere. */
function preTreatment(facts: RescueFacts): readonly string[] {
  const lines: string[] = []
  if (facts.family === 'Fabaceae') {
    lines.push(
      'Let old dry pulses take up damp for a day or two over moist paper before sowing: soaked dry they split.',
    )
  }
  if (facts.hardSeeded) {
    lines.push('Nick or sand those that stay hard on moist paper after a week; leave the rest whole.')
  }
  return lines
}

function whomToAsk(names: readonly string[]): string {
  if (names.length === 0)
    return 'Nobody is known to have more: ask other libraries and growers of your region now.'
  return `Ask for seed before it is too late: ${names.join('; ')}.`
}
