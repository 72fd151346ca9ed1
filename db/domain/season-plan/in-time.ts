import { type Message, message } from '../../messages/message.ts'
import { areNear, flowerApart, lookUp, type PlanChoice, type PlanProblem } from './plan.ts'

/** What is sown first and what follows, where a choice is kept apart from others of its plan by time; '' where it is not. */
export function toldApartInTime(
  problem: PlanProblem,
  choices: readonly PlanChoice[],
  choice: PlanChoice,
): Message | '' {
  if (choice.way === 'covered') return ''
  const look = lookUp(problem)
  const one = { ...look(choice), way: choice.way }
  const others = choices
    .filter(({ accessionId, way }) => accessionId !== choice.accessionId && way !== 'covered')
    .map((other) => ({ ...look(other), way: other.way }))
    .filter((other) => areNear(one, other) && flowerApart(one, other))
  if (others.length === 0) return ''
  const named = others.map(({ candidate: { variety }, site }) =>
    site === one.site ? variety : message('season.variety-at', { variety, garden: site.name }),
  )
  const days = Math.max(...[one, ...others].map(({ candidate }) => candidate.laterDays ?? 0))
  return one.way === 'later'
    ? message('season.sow-after', { days, others: { list: named } })
    : message('season.sow-on-time', { others: { list: named }, count: others.length, days })
}
