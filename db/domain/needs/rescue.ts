import { countInWords, type Manner, numberInWords } from '../amounts/in-words.ts'
import type { CountedUnit } from '../crops/counted-unit.ts'
import { binomialChances } from '../germination/binomial.ts'
import { probability } from '../shared/probability.ts'
import { type Breeding, breedingOf } from './grade.ts'
import { setAsideInWords } from './urgency.ts'

/** A lot that could be sown: its seeds, and the part of them that is alive, 0 to 1. */
export interface RescueLot {
  readonly lotId: number
  readonly lotNumber: string
  readonly seeds: number
  readonly viability: number
}

export interface RescueFacts {
  readonly lots: readonly RescueLot[]
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

/** What to do with the last seeds, with its reasons; `sow` is null where no seed is left. */
export interface RescueAdvice {
  readonly sow: { readonly lotId: number; readonly lotNumber: string; readonly seeds: number } | null
  readonly keepBack: number
  readonly expectedPlants: number
  /** The chance of at least the fewest plants. */
  readonly chance: number
  readonly advice: readonly string[]
}

/** The most of the last seeds that is risked at once. Common practice, no source. */
const MOST_AT_RISK = 2 / 3

/** The most seeds of a last lot that are risked at once: two thirds, and at least one. */
export function mostToRisk(seeds: number): number {
  return Math.max(1, Math.floor(seeds * MOST_AT_RISK))
}

/**
 * Advice for an accession with too few living seeds for a full regrowing.
 *
 * Sow from the lot with most living seeds, as many as the full regrowing would take but never more than two thirds of
 * it, so that one lost sowing does not end the variety. The chance takes each seed by itself.
 */
export function adviseRescue(facts: RescueFacts): RescueAdvice {
  const best = facts.lots
    .filter((lot) => lot.seeds > 0)
    .toSorted((a, b) => b.seeds * b.viability - a.seeds * a.viability || b.viability - a.viability)[0]
  const ask = whomToAsk(facts.mayHaveIt)
  if (best === undefined) {
    const gone =
      facts.setAside === 0
        ? 'No seed is left to sow here.'
        : `No ${facts.unit.one} is free to sow here, but ${setAsideInWords(facts.setAside, facts.unit, facts.manner)}`
    return { sow: null, keepBack: 0, expectedPlants: 0, chance: 0, advice: [gone, ask] }
  }
  const becomes = best.viability * facts.emergence
  const wanted = becomes > 0 ? Math.ceil(facts.plants / becomes - 1e-6) : best.seeds
  const seeds = Math.min(wanted, mostToRisk(best.seeds))
  const all = facts.lots.reduce((sum, lot) => sum + lot.seeds, 0)
  const chance = binomialChances(seeds, becomes)
    .slice(facts.fewestPlants)
    .reduce((sum, part) => sum + part, 0)
  const expectedPlants = seeds * becomes
  const number = (value: number, decimals = 0) => numberInWords(value, facts.manner, decimals)
  const sow = { lotId: best.lotId, lotNumber: best.lotNumber, seeds }
  return {
    sow,
    keepBack: all - seeds,
    expectedPlants,
    chance: probability(chance),
    advice: [
      `Sow ${countInWords(seeds, facts.unit, facts.manner)} of ${best.lotNumber}, the lot with most living seed, and keep ${number(all - seeds)} back for a second try.`,
      `Expect about ${number(Math.round(expectedPlants))} of the ${number(facts.plants)} plants: ${number(seeds)} x ${number(best.viability, 2)} alive x ${number(facts.emergence, 4)} emergence.`,
      ...preTreatment(facts),
      'Sow indoors in clean, moist, not wet mix, one by one, and prick out: last seeds are not sown in the open.',
      SMALL_POPULATION[breedingOf(facts.matingSystem)],
      ask,
    ],
  }
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
