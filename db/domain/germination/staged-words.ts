import { assertNever } from '../shared/assert-never.ts'
import type { Stage, StagedDecision } from './staged-plan.ts'

/** Stages added up. */
export interface StagesSum {
  readonly stages: number
  readonly tested: number
  readonly germinated: number
}

/** What stages come to, and what to do: '67 of 80 sprouted in 2 stages: still open. Lay 40 more out. ...' */
export function stagedInWords(
  { stages, tested, germinated }: StagesSum,
  { kind, now, next }: StagedDecision,
  threshold: number,
): string {
  const sum = `${germinated} of ${tested} sprouted in ${stages === 1 ? 'one stage' : `${stages} stages`}`
  const plan = `The plan for ${Math.round(100 * threshold)} %`
  switch (kind) {
    case 'regrow':
      return `${sum}: regrow. ${plan} says so at ${now.regrowAtMost} or fewer.`
    case 'keep':
      return `${sum}: keep. ${plan} says so at ${now.keepAtLeast} or more.`
    case 'go-on':
      return `${sum}: still open. ${nextInWords(tested, next)}`
    case 'undecided':
      return `${sum}: still open, and the plan ends here: the lot lies too near ${Math.round(100 * threshold)} % to be told apart from it.`
    default:
      return assertNever(kind, 'A decision has no words yet')
  }
}

function nextInWords(tested: number, next: Stage | null): string {
  if (next === null) return ''
  const ends = [
    ...(next.regrowAtMost === null ? [] : [`regrow at ${next.regrowAtMost} or fewer`]),
    ...(next.keepAtLeast === null ? [] : [`keep at ${next.keepAtLeast} or more`]),
  ]
  const then = ends.length === 0 ? '' : ` Of ${next.tested} in all: ${ends.join(', ')}.`
  return `Lay ${next.tested - tested} more out.${then}`
}
