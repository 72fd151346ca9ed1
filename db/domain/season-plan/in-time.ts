import { areNear, flowerApart, lookUp, type PlanChoice, type PlanProblem } from './plan.ts'

/** What is sown first and what follows, where a choice is kept apart from others of its plan by time; '' where it is not. */
export function apartInTimeInWords(
  problem: PlanProblem,
  choices: readonly PlanChoice[],
  choice: PlanChoice,
): string {
  if (choice.way === 'covered') return ''
  const look = lookUp(problem)
  const one = { ...look(choice), way: choice.way }
  const others = choices
    .filter(({ accessionId, way }) => accessionId !== choice.accessionId && way !== 'covered')
    .map((other) => ({ ...look(other), way: other.way }))
    .filter((other) => areNear(one, other) && flowerApart(one, other))
  if (others.length === 0) return ''
  const named = others
    .map(({ candidate, site }) =>
      site === one.site ? candidate.variety : `${candidate.variety} at ${site.name}`,
    )
    .join(' and ')
  const days = Math.max(...[one, ...others].map(({ candidate }) => candidate.laterDays ?? 0))
  const watch = 'If both are in flower on one day, tell us before seed is saved.'
  return one.way === 'later'
    ? `Sow it ${days} days after ${named}, so that it flowers when that has done. ${watch}`
    : `Sow it on time: ${named} ${others.length === 1 ? 'follows' : 'follow'} ${days} days later, to flower when this has done. ${watch}`
}
