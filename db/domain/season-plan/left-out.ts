import { type Message, message } from '../../messages/message.ts'
import { clashesOf, type PlanCandidate, type PlanChoice, type PlanProblem } from './plan.ts'

/** Why a candidate is in no garden of a plan: what would clash where it clashes least, in one sentence. */
export function whyLeftOut(
  problem: PlanProblem,
  plan: readonly PlanChoice[],
  candidate: PlanCandidate,
): Message {
  if (problem.sites.length === 0) return message('season.no-garden')
  const tries = problem.sites.map((site) => {
    const choice = { accessionId: candidate.accessionId, siteId: site.siteId, way: 'open' as const }
    return clashesOf(problem, [...plan, choice])
  })
  const least = tries.toSorted((a, b) => a.length - b.length)[0]
  return least?.[0]?.sentence ?? message('season.not-worth')
}
