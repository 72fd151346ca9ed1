import { countInWords, type Manner, numberInWords } from '../amounts/in-words.ts'
import type { CountedUnit } from '../crops/counted-unit.ts'
import { chanceInWords } from '../needs/assurance.ts'
import type { Breeding } from '../needs/population-goal.ts'
import { isolationInWords } from './isolation-distance.ts'
import { hoursInWords, hoursOfIsolation, type IsolationMethod, type Pollination } from './isolation-method.ts'
import { extractionInWords, type SeedExtraction } from './seed-extraction.ts'

/** What a grower has to know of one variety, as it is planned. */
export interface GrowingFacts {
  readonly plants: number
  /** Seeds handed out for it; null where none can be. */
  readonly seeds: number | null
  /** The chance, 0 to 1, that all the plants come of them. */
  readonly chance: number
  /** Why none can be; '' where some can. */
  readonly noSeed: string
  /** Plants to expect where the seeds are the last and make no full regrowing; null where they make one. */
  readonly ofTheLast: number | null
  /** How to treat the last seeds, in sentences; empty where they are not the last. */
  readonly care: readonly string[]
  readonly unit: CountedUnit
  readonly manner: Manner
  readonly areaM2: number
  readonly isolationM: number
  /** What is not known of how it crosses, in a sentence; '' where all is. */
  readonly unknown: string
  /** Said where the garden's season is short for it; '' where it is not. */
  readonly shortSeason: string
  /** What it crosses with, by everyday names. */
  readonly group: string
  readonly way: IsolationMethod
  /** What is sown first and what follows, in a sentence; '' where nothing of the plan is kept apart by time. */
  readonly apartInTime: string
  readonly pollination: Pollination
  readonly breeding: Breeding
  readonly biennial: boolean
  readonly extraction: SeedExtraction
}

/** One piece of advice under its heading. */
export interface Advice {
  readonly heading: string
  readonly text: string
}

/**
 * What the grower of one variety is told: sowing, keeping apart, selecting, harvesting.
 *
 * Common practice, no source; figures come from the plan.
 */
export function growingAdvice(facts: GrowingFacts): readonly Advice[] {
  return [
    { heading: 'Sow', text: sow(facts) },
    ...(facts.care.length === 0 ? [] : [{ heading: 'The last seeds', text: facts.care.join(' ') }]),
    { heading: 'Keep apart', text: apart(facts) },
    { heading: 'Select', text: select(facts) },
    { heading: 'Harvest and dry', text: harvest(facts) },
    ...(facts.biennial
      ? [
          {
            heading: 'Two seasons',
            text: `It flowers in its second year. Lift the roots or plants in autumn, keep ${facts.ofTheLast === null ? 'the best' : 'every one'} over winter in damp sand, cool and free of frost, and plant them again in spring.`,
          },
        ]
      : []),
  ]
}

function sow(facts: GrowingFacts): string {
  const { seeds, unit, manner, ofTheLast, shortSeason } = facts
  const plants = numberInWords(facts.plants, manner)
  const square = `a square of ${Math.round(100 * Math.sqrt(facts.areaM2 / facts.plants))} cm for each`
  const season = shortSeason === '' ? '' : ` ${shortSeason}`
  const given = seeds === null ? '' : countInWords(seeds, unit, manner)
  if (seeds !== null && ofTheLast !== null) {
    return `You get ${given}, of the last that there are. Expect about ${numberInWords(ofTheLast, manner)} of the ${plants} plants that we would like, and raise every one (${square}). Tell us soon how many came up.${season}`
  }
  const sure = seeds === null ? '' : ` So many come up about ${chanceInWords(facts.chance)}.`
  const got = seeds === null ? `No seed is ready yet: ${facts.noSeed}.` : `You get ${given}.`
  return `${got} Raise ${plants} plants, on about ${rounded(facts.areaM2, manner)} square metres of bed (${square}).${sure} If fewer come up, grow all of them and tell us.${season}`
}

/** How a cover is used, by what pollinates the crop. Common practice, no source. */
const UNDER_A_COVER: Readonly<Record<Pollination, string>> = {
  self: 'a cage or fleece over all of it, closed before the first flower opens; it pollinates itself.',
  insect:
    'a cage, or bags on the flowers before they open, and pollinate by hand between different plants. Mark the covered flowers; save seed of those only.',
  wind: 'bags of close paper, for insect netting lets pollen through, on what sheds pollen and on what takes it before either opens, and carry pollen by hand from plant to plant every morning. Mark what was pollinated; save seed of that only.',
}

function apart(facts: GrowingFacts): string {
  const { way, plants, pollination, apartInTime, isolationM, group, breeding, unknown, manner } = facts
  if (way === 'covered') {
    return `Keep it covered while it flowers: ${UNDER_A_COVER[pollination]} It is ${hoursInWords(hoursOfIsolation(way, plants, pollination))} of work in all.`
  }
  const caveat = unknown === '' ? '' : ` ${unknown}`
  const planned = apartInTime === '' ? '' : ' but what is planned'
  const inTime = apartInTime === '' ? '' : ` ${apartInTime}`
  const selfed =
    breeding === 'selfer' ? ' It mostly pollinates itself; bees cross a few flowers all the same.' : ''
  return `Grow no other ${group}${planned} within ${isolationInWords(isolationM, manner)}, farther if you can, and look over the fences. If a neighbour’s flowers at the same time, tell us before you save seed.${inTime}${selfed}${caveat}`
}

function select({ plants, ofTheLast, breeding, manner }: GrowingFacts): string {
  const rogue = 'Pull out what is plainly another variety or diseased, before it flowers.'
  if (ofTheLast !== null || breeding === 'selfer')
    return `${rogue} Save seed of all the remaining plants, about the same of each.`
  return `${rogue} Save seed of as many plants as you can, all ${numberInWords(plants, manner)} if possible, about the same of each: few parents weaken it.`
}

function harvest({ extraction }: GrowingFacts): string {
  return `${extractionInWords(extraction)} Dry it thinly spread in moving air out of the sun, never above 35 °C, until it snaps instead of bending. Label it from the first day.`
}

function rounded(value: number, manner: Manner): string {
  return numberInWords(value, manner, value < 10 ? 1 : 0)
}
