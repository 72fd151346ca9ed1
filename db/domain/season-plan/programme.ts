import { maximalCliques } from './cliques.ts'
import { possibleChoices } from './greedy.ts'
import { crosses, freeBed, freeVarieties, type PlanChoice, type PlanProblem } from './plan.ts'

/** An integer programme as text, with what each of its variables means. */
export interface Programme {
  /** In the LP format that solvers share (CPLEX LP, as HiGHS and GLPK read it). */
  readonly text: string
  readonly choices: ReadonlyMap<string, PlanChoice>
}

type Possible = ReturnType<typeof possibleChoices>[number] & { readonly name: string }

const TERMS_ON_A_LINE = 8

/**
 * The season plan as an integer programme: one 0-1 variable for each accession at each site in each way.
 *
 * Each accession stands once at most; beds and numbers of varieties hold; of plantings that would cross, at most
 * one of each largest set that all cross with one another. Locked choices are fixed at 1, and must not clash.
 */
export function programmeOf(problem: PlanProblem, locked: readonly PlanChoice[]): Programme {
  const fixed = new Set(locked.map(keyOf))
  const possible: Possible[] = possibleChoices(problem).map((row, index) => ({ ...row, name: `x${index}` }))
  const rows: string[] = []
  const atMost = (terms: readonly string[], most: number) => {
    if (terms.length > 0) rows.push(` r${rows.length}: ${folded(terms)} <= ${most}`)
  }
  for (const all of Map.groupBy(possible, ({ choice }) => choice.accessionId).values()) {
    atMost(
      all.map(({ name }) => `+ ${name}`),
      1,
    )
  }
  for (const site of problem.sites) {
    const here = possible.filter(({ choice }) => choice.siteId === site.siteId)
    atMost(
      here.map(({ name, area }) => `+ ${figure(area)} ${name}`),
      freeBed(site),
    )
    atMost(
      here.map(({ name }) => `+ ${name}`),
      freeVarieties(site),
    )
  }
  for (const names of crossingSets(possible)) {
    atMost(
      names.map((name) => `+ ${name}`),
      1,
    )
  }
  const fixings = possible.filter(({ choice }) => fixed.has(keyOf(choice))).map(({ name }) => ` ${name} = 1`)
  const text = [
    'Maximize',
    ` worth: ${possible.length === 0 ? '0 nothing' : folded(possible.map(({ name, value }) => `+ ${figure(value)} ${name}`))}`,
    'st',
    ...(rows.length === 0 ? [' r0: nothing <= 1'] : rows),
    ...(fixings.length === 0 ? [] : ['Bounds', ...fixings]),
    'Binary',
    ` ${possible.length === 0 ? 'nothing' : folded(possible.map(({ name }) => name))}`,
    'End',
    '',
  ].join('\n')
  return { text, choices: new Map(possible.map(({ name, choice }) => [name, choice])) }
}

/** The variables of a programme that a plan sets to 1. */
export function variablesOf({ choices }: Programme, plan: readonly PlanChoice[]): string[] {
  const planned = new Set(plan.map(keyOf))
  return [...choices].flatMap(([name, choice]) => (planned.has(keyOf(choice)) ? [name] : []))
}

/** Names of plantings of which at most one may stand. */
function crossingSets(possible: readonly Possible[]): string[][] {
  const open = possible.filter(({ way }) => way !== 'covered')
  return [...Map.groupBy(open, ({ candidate }) => candidate.group).values()].flatMap((group) => {
    const nodes = [
      ...Map.groupBy(
        group,
        ({ candidate, site, way }) => `${candidate.isolation} ${candidate.laterDays} ${site.siteId} ${way}`,
      ).values(),
    ]
    const first = (node: readonly Possible[]) => {
      const [one] = node
      if (one === undefined) throw new Error('A crossing set without plantings')
      return one
    }
    const near = (a: readonly Possible[], b: readonly Possible[]) => crosses(first(a), first(b))
    // Where a garden is large enough for two of a crop, its plantings stand in no set of which only one may be.
    const single = nodes.filter((node) => near(node, node))
    const roomy = nodes.filter((node) => !near(node, node))
    const sets = maximalCliques(single.length, (a, b) => near(single[a] ?? [], single[b] ?? [])).map(
      (clique) => clique.flatMap((node) => (single[node] ?? []).map(({ name }) => name)),
    )
    const pairs = roomy.flatMap((node) =>
      nodes
        .filter((other) => other !== node && near(node, other))
        .flatMap((other) => node.flatMap((a) => other.map((b) => [a.name, b.name]))),
    )
    return [...sets.filter((set) => set.length > 1), ...pairs]
  })
}

function keyOf({ accessionId, siteId, way }: PlanChoice): string {
  return `${accessionId} ${siteId} ${way}`
}

function figure(value: number): string {
  return String(Number(value.toPrecision(12)))
}

/** Lines short enough for every reader of the format. */
function folded(terms: readonly string[]): string {
  const lines: string[] = []
  for (let at = 0; at < terms.length; at += TERMS_ON_A_LINE) {
    lines.push(terms.slice(at, at + TERMS_ON_A_LINE).join(' '))
  }
  return lines.join('\n   ')
}
