import { metresBetween, type Position } from './position.ts'
import { isSeasonShort } from './season-length.ts'

/** An accession that could be grown. */
export interface PlanCandidate {
  readonly accessionId: number
  readonly variety: string
  readonly cropId: string
  /** Plants that cross with one another bear one name. */
  readonly group: string
  /** Metres to keep from others of the group. */
  readonly isolation: number
  /** Bed that all its plants take, square metres. */
  readonly area: number
  /** What growing it is worth: the loss that it averts, above 0. */
  readonly worth: number
  /** Days without frost that it usually needs to ripe seed; null where frost does not bound it. */
  readonly daysToSeed: number | null
  /** It flowers in its second season only, so what sets seed this season cannot cross with it. */
  readonly flowersNextSeason: boolean
}

/** A grower's garden. */
export interface PlanSite {
  readonly siteId: number
  readonly name: string
  /** Null: nobody knows where it lies, and it is taken to be far from every other. */
  readonly position: Position | null
  /** Free bed, square metres. */
  readonly area: number
  readonly mostVarieties: number
  /** Days without frost in a year; null: nobody said. */
  readonly seasonDays: number | null
  /** Crops that the grower takes; empty: any. */
  readonly takes: readonly string[]
  /** The part of past grow-outs here that brought seed back, 0 to 1. */
  readonly reliability: number
  /** What flowers nearby: a crossing group and how far off. */
  readonly neighbours: readonly { readonly group: string; readonly metres: number }[]
  /** Bed and varieties that roots of last season take: they are planted again and set seed this season. */
  readonly carried: { readonly area: number; readonly varieties: number }
  /** Roots of last season that flower in the open this season, wherever they stand, with the metres they want. */
  readonly flowering: readonly {
    readonly variety: string
    readonly group: string
    readonly metres: number
    readonly isolation: number
  }[]
}

export interface PlanProblem {
  readonly candidates: readonly PlanCandidate[]
  readonly sites: readonly PlanSite[]
}

/** One accession at one site; `covered`: in a cage or bagged and pollinated by hand, so that it crosses with none. */
export interface PlanChoice {
  readonly accessionId: number
  readonly siteId: number
  readonly covered: boolean
}

/** What makes a choice impossible, in words. */
export interface Clash {
  readonly kind: 'isolation' | 'neighbour' | 'area' | 'varieties' | 'crop' | 'twice'
  readonly sentence: string
  readonly choices: readonly PlanChoice[]
}

/** What covering costs in worth, for its labour. Common practice, no source. */
const LABOUR_OF_COVERING = 0.05

/** The part of what it is worth that is left where the season is shorter than usual for the crop. Judgement, no source. */
const IN_A_SHORT_SEASON = 0.5

/**
 * What a choice is worth: the averted loss, as far as the grower and the garden's season are to be relied on, less the
 * labour of covering.
 */
export function choiceWorth(candidate: PlanCandidate, site: PlanSite, covered: boolean): number {
  const ripens = isSeasonShort(candidate.daysToSeed, site.seasonDays) ? IN_A_SHORT_SEASON : 1
  return candidate.worth * site.reliability * ripens - (covered ? LABOUR_OF_COVERING : 0)
}

/** Metres between two sites; within one site the length of its beds; unknown places are far apart. */
export function metresApart(a: PlanSite, b: PlanSite): number {
  if (a.siteId === b.siteId) return Math.sqrt(a.area)
  return a.position === null || b.position === null
    ? Number.POSITIVE_INFINITY
    : metresBetween(a.position, b.position)
}

/** Bed that is free for this season's sowing, square metres. */
export function freeBed({ area, carried }: PlanSite): number {
  return Math.max(0, area - carried.area)
}

/** Varieties that a site can still take this season. */
export function freeVarieties({ mostVarieties, carried }: PlanSite): number {
  return Math.max(0, mostVarieties - carried.varieties)
}

/** Whether a candidate can stand at a site at all, everything else aside. */
export function fits(candidate: PlanCandidate, site: PlanSite, covered: boolean): boolean {
  return (
    ownClashes(candidate, site, { accessionId: candidate.accessionId, siteId: site.siteId, covered })
      .length === 0
  )
}

/** Whether two open plantings are so near that they cross. */
export function crosses(a: PlanCandidate, at: PlanSite, b: PlanCandidate, there: PlanSite): boolean {
  return a.group === b.group && metresApart(at, there) < Math.max(a.isolation, b.isolation)
}

/** Everything that is wrong with a plan, in words; empty where it can be done. */
export function clashesOf(problem: PlanProblem, choices: readonly PlanChoice[]): readonly Clash[] {
  const look = lookUp(problem)
  const placed = choices.map((choice) => ({ choice, ...look(choice) }))
  const clashes: Clash[] = placed.flatMap(({ choice, candidate, site }) =>
    ownClashes(candidate, site, choice),
  )
  for (const [index, one] of placed.entries()) {
    for (const other of placed.slice(index + 1)) {
      const both = [one.choice, other.choice]
      if (one.choice.accessionId === other.choice.accessionId) {
        clashes.push({ kind: 'twice', choices: both, sentence: `${one.candidate.variety} is planned twice.` })
      } else if (
        !one.choice.covered &&
        !other.choice.covered &&
        crosses(one.candidate, one.site, other.candidate, other.site)
      ) {
        clashes.push({ kind: 'isolation', choices: both, sentence: isolationInWords(one, other) })
      }
    }
  }
  for (const site of problem.sites) {
    const here = placed.filter(({ choice }) => choice.siteId === site.siteId)
    const area = here.reduce((sum, { candidate }) => sum + candidate.area, 0)
    const all = here.map(({ choice }) => choice)
    if (area > freeBed(site) + 1e-9) {
      const sentence = `${site.name} has ${bedInWords(site)}, and this takes ${metres(area)}.`
      if (here.length > 1) clashes.push({ kind: 'area', choices: all, sentence })
    }
    if (here.length > freeVarieties(site)) {
      const { varieties } = site.carried
      const roots = varieties === 0 ? '' : ` beside ${varieties} from last season`
      const sentence = `${site.name} takes at most ${site.mostVarieties} varieties, and this is ${here.length}${roots}.`
      clashes.push({ kind: 'varieties', choices: all, sentence })
    }
  }
  return clashes
}

/** Finds the candidate and the site of a choice; throws RangeError for one that is not in the problem. */
export function lookUp(problem: PlanProblem) {
  const candidates = new Map(problem.candidates.map((candidate) => [candidate.accessionId, candidate]))
  const sites = new Map(problem.sites.map((site) => [site.siteId, site]))
  return (choice: PlanChoice): { readonly candidate: PlanCandidate; readonly site: PlanSite } => {
    const candidate = candidates.get(choice.accessionId)
    const site = sites.get(choice.siteId)
    if (candidate === undefined || site === undefined) {
      throw new RangeError(`Not in this plan: accession ${choice.accessionId} at site ${choice.siteId}`)
    }
    return { candidate, site }
  }
}

/** What a plan is worth in all. */
export function worthOf(problem: PlanProblem, choices: readonly PlanChoice[]): number {
  const look = lookUp(problem)
  return choices.reduce((sum, choice) => {
    const { candidate, site } = look(choice)
    return sum + choiceWorth(candidate, site, choice.covered)
  }, 0)
}

function ownClashes(candidate: PlanCandidate, site: PlanSite, choice: PlanChoice): Clash[] {
  const clashes: Clash[] = []
  const add = (kind: Clash['kind'], sentence: string) => clashes.push({ kind, sentence, choices: [choice] })
  if (site.takes.length > 0 && !site.takes.includes(candidate.cropId)) {
    add('crop', `${site.name} does not take the crop of ${candidate.variety}.`)
  }
  if (candidate.area > freeBed(site) + 1e-9) {
    add(
      'area',
      `${candidate.variety} takes ${metres(candidate.area)} m² of bed, and ${site.name} has ${site.carried.area === 0 ? metres(site.area) : bedInWords(site)}.`,
    )
  }
  const near = site.neighbours.find(
    ({ group, metres }) => group === candidate.group && metres < candidate.isolation,
  )
  if (near !== undefined && !choice.covered) {
    add(
      'neighbour',
      `${near.group} flowers ${metres(near.metres)} m from ${site.name}, and ${candidate.variety} wants ${metres(candidate.isolation)} m. Cover it, or grow it elsewhere.`,
    )
  }
  const roots = site.flowering.find(
    ({ group, metres, isolation }) =>
      group === candidate.group && metres < Math.max(candidate.isolation, isolation),
  )
  if (roots !== undefined && !choice.covered && !candidate.flowersNextSeason) {
    const wanted = Math.max(candidate.isolation, roots.isolation)
    add(
      'neighbour',
      `${roots.variety} of last season flowers ${metres(roots.metres)} m from ${candidate.variety} at ${site.name}, and they want ${metres(wanted)} m. Cover one of them, or grow it elsewhere.`,
    )
  }
  return clashes
}

interface Placed {
  readonly candidate: PlanCandidate
  readonly site: PlanSite
}

function isolationInWords(one: Placed, other: Placed): string {
  const wanted = Math.max(one.candidate.isolation, other.candidate.isolation)
  const apart = metres(metresApart(one.site, other.site))
  const where =
    one.site.siteId === other.site.siteId
      ? `both at ${one.site.name}, whose beds are ${apart} m across`
      : `at ${one.site.name} and ${other.site.name}, ${apart} m apart`
  return `${one.candidate.variety} and ${other.candidate.variety} cross: ${where}, and they want ${metres(wanted)} m. Cover one of them, or move it.`
}

function bedInWords(site: PlanSite): string {
  const all = `${metres(site.area)} m² of bed`
  return site.carried.area === 0
    ? all
    : `${all}, ${metres(site.carried.area)} m² of it under roots of last season`
}

function metres(value: number): string {
  return String(Number(value.toFixed(value < 10 ? 1 : 0)))
}
