import { countInWords, grouped } from '../amounts/in-words.ts'
import type { CountedUnit } from '../crops/counted-unit.ts'
import type { Breeding } from '../needs/grade.ts'

/** What a grower has to know of one variety, as it is planned. */
export interface GrowingFacts {
  readonly plants: number
  /** Seeds handed out for it; null where none can be. */
  readonly seeds: number | null
  /** Why none can be; '' where some can. */
  readonly noSeed: string
  readonly unit: CountedUnit
  readonly areaM2: number
  readonly isolationM: number
  /** What is not known of how it crosses, in a sentence; '' where all is. */
  readonly unknown: string
  /** Said where the garden's season is short for it; '' where it is not. */
  readonly shortSeason: string
  readonly group: string
  readonly covered: boolean
  readonly breeding: Breeding
  readonly biennial: boolean
  readonly family: string
}

/** One piece of advice under its heading. */
export interface Advice {
  readonly heading: string
  readonly text: string
}

/** Families whose seed ripens in wet flesh. */
const WET_SEEDED = ['Solanaceae', 'Cucurbitaceae']

/**
 * What the grower of one variety is told: sowing, keeping apart, selecting, harvesting.
 *
 * Common practice, no source; figures come from the plan.
 */
export function growingAdvice(facts: GrowingFacts): readonly Advice[] {
  const each = facts.areaM2 / facts.plants
  const sow =
    facts.seeds === null
      ? `No seed is ready yet: ${facts.noSeed}.`
      : `You get ${countInWords(facts.seeds, facts.unit)}.`
  return [
    {
      heading: 'Sow',
      text: `${sow} Raise ${grouped(facts.plants)} plants, on about ${round(facts.areaM2)} square metres of bed (a square of ${Math.round(100 * Math.sqrt(each))} cm for each). If fewer come up, grow all of them and tell us.${facts.shortSeason === '' ? '' : ` ${facts.shortSeason}`}`,
    },
    { heading: 'Keep apart', text: apart(facts) },
    { heading: 'Select', text: select(facts) },
    { heading: 'Harvest and dry', text: harvest(facts) },
    ...(facts.biennial
      ? [
          {
            heading: 'Two seasons',
            text: 'It flowers in its second year. Lift the roots or plants in autumn, keep the best over winter in damp sand, cool and free of frost, and plant them again in spring.',
          },
        ]
      : []),
  ]
}

function apart({ covered, isolationM, group, breeding, unknown }: GrowingFacts): string {
  const caveat = unknown === '' ? '' : ` ${unknown}`
  if (covered) {
    return 'Keep it covered while it flowers: a cage, or bags on the flowers before they open, and pollinate by hand between different plants. Mark the covered flowers; save seed of those only.'
  }
  const selfed =
    breeding === 'selfer' ? ' It mostly pollinates itself; bees cross a few flowers all the same.' : ''
  return `Grow no other ${group} within ${round(isolationM)} m, and look over the fences. If a neighbour’s flowers at the same time, tell us before you save seed.${selfed}${caveat}`
}

function select({ plants, breeding }: GrowingFacts): string {
  const rogue = 'Pull out what is plainly another variety or diseased, before it flowers.'
  return breeding === 'selfer'
    ? `${rogue} Save seed of every other plant, about the same of each.`
    : `${rogue} Save seed of as many plants as you can, all ${grouped(plants)} if possible, about the same of each: few parents weaken it.`
}

function harvest({ family }: GrowingFacts): string {
  const dry =
    'Dry it thinly spread in moving air out of the sun, never above 35 °C, until it snaps instead of bending. Label it from the first day.'
  return WET_SEEDED.includes(family)
    ? `Let the fruit ripen fully, take the seed out and wash it; let tomato seed stand in its juice for two days first. ${dry}`
    : `Let pods and heads dry on the plant as long as the weather allows, and gather in several goes. ${dry}`
}

function round(value: number): string {
  return String(Number(value.toFixed(value < 10 ? 1 : 0)))
}
