import { ISOLATION_METHODS } from './isolation-method.ts'
import {
  choiceWorth,
  crosses,
  fits,
  freeBed,
  freeVarieties,
  lookUp,
  type PlanChoice,
  type PlanProblem,
} from './plan.ts'

/**
 * A plan without a solver: the most valuable choice that still fits, again and again, round the locked ones.
 *
 * Never impossible where the locked choices are possible. So there is always an answer, and the solver has to beat it.
 */
export function greedyPlan(problem: PlanProblem, locked: readonly PlanChoice[]): readonly PlanChoice[] {
  const plan: PlanChoice[] = [...locked]
  const look = lookUp(problem)
  const free = new Map(
    problem.sites.map((site) => [site.siteId, { area: freeBed(site), varieties: freeVarieties(site) }]),
  )
  const take = (choice: PlanChoice) => {
    const left = free.get(choice.siteId)
    if (left === undefined) return
    left.area -= look(choice).candidate.area
    left.varieties -= 1
  }
  for (const choice of locked) take(choice)
  const placed = new Set(locked.map(({ accessionId }) => accessionId))
  for (const { choice } of ranked(problem)) {
    const { candidate, site } = look(choice)
    const left = free.get(choice.siteId)
    if (placed.has(choice.accessionId) || left === undefined) continue
    if (left.area < candidate.area || left.varieties < 1) continue
    const planting = { candidate, site, way: choice.way }
    if (plan.some((other) => crosses(planting, { ...look(other), way: other.way }))) continue
    plan.push(choice)
    placed.add(choice.accessionId)
    take(choice)
  }
  return plan
}

/** Every choice that is possible by itself and worth something, the most valuable first, small beds before large. */
function ranked(problem: PlanProblem) {
  return possibleChoices(problem).toSorted(
    (a, b) => b.value - a.value || a.area - b.area || a.choice.accessionId - b.choice.accessionId,
  )
}

/** Every choice that is possible by itself, with what it is worth and the bed it takes. */
export function possibleChoices(problem: PlanProblem) {
  return problem.candidates.flatMap((candidate) =>
    problem.sites.flatMap((site) =>
      ISOLATION_METHODS.flatMap((way) => {
        const value = choiceWorth(candidate, site, way)
        if (value <= 0 || !fits(candidate, site, way)) return []
        const choice: PlanChoice = { accessionId: candidate.accessionId, siteId: site.siteId, way }
        return [{ choice, value, area: candidate.area, candidate, site, way }]
      }),
    ),
  )
}
