import { type Message, message } from '../../messages/message.ts'
import { hoursOfIsolation, type IsolationMethod, type Pollination } from './isolation-method.ts'
import { metresBetween, type Position } from './position.ts'
import { isSeasonShort } from './season-length.ts'

/** So long before its sowing seed goes out for a season. Common practice, no source. */
export const PREPARED_DAYS = 270

/** An accession that could be grown. */
export interface PlanCandidate {
  readonly accessionId: number
  readonly variety: string
  readonly cropId: string
  /** Plants that cross with one another bear one name. */
  readonly group: string
  /** Metres to keep from others of the group. */
  readonly isolation: number
  readonly plants: number
  /** Bed that all its plants take, square metres. */
  readonly area: number
  /** What growing it is worth: the loss that it averts, above 0. */
  readonly worth: number
  /** Days without frost that it usually needs to ripe seed; null where frost does not bound it. */
  readonly daysToSeed: number | null
  /** Days later to sow it so that it flowers after others of its group; null where that cannot be relied on. */
  readonly laterDays: number | null
  readonly pollination: Pollination
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
  /** What flowers nearby: a crop, its crossing group and how far off. */
  readonly neighbours: readonly { readonly crop: string; readonly group: string; readonly metres: number }[]
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

/** One accession at one site, and how it is kept from crossing there. */
export interface PlanChoice {
  readonly accessionId: number
  readonly siteId: number
  readonly way: IsolationMethod
}

/** What makes a choice impossible, in words. */
export interface Clash {
  readonly kind: 'isolation' | 'neighbour' | 'area' | 'varieties' | 'crop' | 'way' | 'twice'
  readonly sentence: Message
  readonly choices: readonly PlanChoice[]
}

/** What an hour of work takes off the worth of a choice. Judgement, no source. */
const WORTH_OF_AN_HOUR = 0.01

/** The part of what it is worth that is left where the season is shorter than usual for the crop. Judgement, no source. */
const IN_A_SHORT_SEASON = 0.5

/**
 * What a choice is worth: the averted loss, as far as the grower and the garden's season are to be relied on, less the
 * work that its way of growing adds.
 */
export function choiceWorth(candidate: PlanCandidate, site: PlanSite, way: IsolationMethod): number {
  const ripens = isSeasonShort(daysNeeded(candidate, way), site.seasonDays) ? IN_A_SHORT_SEASON : 1
  const hours = hoursOfIsolation(way, candidate.plants, candidate.pollination)
  return candidate.worth * site.reliability * ripens - hours * WORTH_OF_AN_HOUR
}

/** Days without frost from the usual time of sowing to ripe seed; null where frost does not bound it. */
export function daysNeeded(candidate: PlanCandidate, way: IsolationMethod): number | null {
  return candidate.daysToSeed === null ? null : candidate.daysToSeed + sownLaterBy(candidate, way)
}

/** Days after the usual time of sowing. */
export function sownLaterBy({ laterDays }: PlanCandidate, way: IsolationMethod): number {
  return way === 'later' ? (laterDays ?? 0) : 0
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
export function fits(candidate: PlanCandidate, site: PlanSite, way: IsolationMethod): boolean {
  return (
    ownClashes(candidate, site, { accessionId: candidate.accessionId, siteId: site.siteId, way }).length === 0
  )
}

/** One accession where and how it grows. */
export interface Planting {
  readonly candidate: PlanCandidate
  readonly site: PlanSite
  readonly way: IsolationMethod
}

/** Whether two plantings cross: neither is covered, they stand too near, and they may flower together. */
export function crosses(a: Planting, b: Planting): boolean {
  return a.way !== 'covered' && b.way !== 'covered' && areNear(a, b) && !flowerApart(a, b)
}

/** Whether one flowers when the other has done: one sown on time, the other later, and both of crops where that holds. */
export function flowerApart(a: Planting, b: Planting): boolean {
  return a.way !== b.way && a.candidate.laterDays !== null && b.candidate.laterDays !== null
}

/** Whether two of one crossing group stand nearer than they want. */
export function areNear(a: Planting, b: Planting): boolean {
  return (
    a.candidate.group === b.candidate.group &&
    metresApart(a.site, b.site) < Math.max(a.candidate.isolation, b.candidate.isolation)
  )
}

/** Everything that is wrong with a plan, in words; empty where it can be done. */
export function clashesOf(problem: PlanProblem, choices: readonly PlanChoice[]): readonly Clash[] {
  const look = lookUp(problem)
  const placed = choices.map((choice) => ({ choice, ...look(choice), way: choice.way }))
  const clashes: Clash[] = placed.flatMap(({ choice, candidate, site }) =>
    ownClashes(candidate, site, choice),
  )
  for (const [index, one] of placed.entries()) {
    for (const other of placed.slice(index + 1)) {
      const both = [one.choice, other.choice]
      if (one.choice.accessionId === other.choice.accessionId) {
        clashes.push({
          kind: 'twice',
          choices: both,
          sentence: message('season.clash-twice', { variety: one.candidate.variety }),
        })
      } else if (crosses(one, other)) {
        clashes.push({ kind: 'isolation', choices: both, sentence: tooNear(one, other) })
      }
    }
  }
  for (const site of problem.sites) {
    const here = placed.filter(({ choice }) => choice.siteId === site.siteId)
    const area = here.reduce((sum, { candidate }) => sum + candidate.area, 0)
    const all = here.map(({ choice }) => choice)
    if (area > freeBed(site) + 1e-9) {
      const sentence = message('season.clash-beds', {
        garden: site.name,
        ...bedOf(site),
        takes: metres(area),
      })
      if (here.length > 1) clashes.push({ kind: 'area', choices: all, sentence })
    }
    if (here.length > freeVarieties(site)) {
      const { varieties } = site.carried
      const sentence = message('season.clash-varieties', {
        garden: site.name,
        most: site.mostVarieties,
        count: here.length,
        roots: varieties,
      })
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
    return sum + choiceWorth(candidate, site, choice.way)
  }, 0)
}

function ownClashes(candidate: PlanCandidate, site: PlanSite, choice: PlanChoice): Clash[] {
  const clashes: Clash[] = []
  const { variety } = candidate
  const garden = site.name
  const add = (kind: Clash['kind'], sentence: Message) => clashes.push({ kind, sentence, choices: [choice] })
  if (site.takes.length > 0 && !site.takes.includes(candidate.cropId)) {
    add('crop', message('season.clash-crop', { garden, variety }))
  }
  if (choice.way === 'later' && candidate.laterDays === null) {
    add('way', message('season.clash-later', { variety }))
  }
  if (candidate.area > freeBed(site) + 1e-9) {
    add(
      'area',
      message('season.clash-bed', { variety, takes: metres(candidate.area), garden, ...bedOf(site) }),
    )
  }
  const near = site.neighbours.find(
    ({ group, metres }) => group === candidate.group && metres < candidate.isolation,
  )
  if (near !== undefined && choice.way !== 'covered') {
    add(
      'neighbour',
      message('season.clash-neighbour', {
        crop: near.crop,
        metres: metres(near.metres),
        garden,
        variety,
        wanted: metres(candidate.isolation),
      }),
    )
  }
  const roots = site.flowering.find(
    ({ group, metres, isolation }) =>
      group === candidate.group && metres < Math.max(candidate.isolation, isolation),
  )
  if (roots !== undefined && choice.way !== 'covered' && !candidate.flowersNextSeason) {
    const wanted = Math.max(candidate.isolation, roots.isolation)
    add(
      'neighbour',
      message('season.clash-roots', {
        other: roots.variety,
        metres: metres(roots.metres),
        variety,
        garden,
        wanted: metres(wanted),
      }),
    )
  }
  return clashes
}

function tooNear(one: Planting, other: Planting): Message {
  const [first, second] = [one.candidate.laterDays, other.candidate.laterDays]
  return message('season.clash-isolation', {
    one: one.candidate.variety,
    other: other.candidate.variety,
    same: one.site.siteId === other.site.siteId ? 'yes' : 'no',
    garden: one.site.name,
    elsewhere: other.site.name,
    metres: metres(metresApart(one.site, other.site)),
    wanted: metres(Math.max(one.candidate.isolation, other.candidate.isolation)),
    later: first === null || second === null ? 0 : Math.max(first, second),
  })
}

function bedOf({ area, carried }: PlanSite) {
  return { bed: metres(area), hasRoots: carried.area === 0 ? 'no' : 'yes', roots: metres(carried.area) }
}

function metres(value: number): number {
  return Number(value.toFixed(value < 10 ? 1 : 0))
}
