import { type Message, message } from '../../messages/message.ts'
import type { Stage, StagedDecision } from './staged-plan.ts'

/** Stages added up. */
export interface StagesSum {
  readonly stages: number
  readonly tested: number
  readonly germinated: number
}

/** What stages come to, and what to do: '67 of 80 sprouted in 2 stages: still open. Lay 40 more out. ...' */
export function stagedTold(sum: StagesSum, { kind, now, next }: StagedDecision, threshold: number): Message {
  const { stages, tested, germinated } = sum
  const facts = { stages, tested, germinated }
  const of = { part: threshold }
  if (kind === 'regrow')
    return message('germination.stages-regrow', { ...facts, threshold: of, limit: now.regrowAtMost ?? 0 })
  if (kind === 'keep')
    return message('germination.stages-keep', { ...facts, threshold: of, limit: now.keepAtLeast ?? 0 })
  if (next === null) return message('germination.stages-undecided', { ...facts, threshold: of })
  return message('germination.stages-go-on', {
    ...facts,
    more: next.tested - tested,
    ends: endsOf(next),
    total: next.tested,
    regrow: next.regrowAtMost ?? 0,
    keep: next.keepAtLeast ?? 0,
  })
}

function endsOf({ regrowAtMost, keepAtLeast }: Stage): 'both' | 'regrow' | 'keep' | 'none' {
  if (regrowAtMost !== null && keepAtLeast !== null) return 'both'
  if (regrowAtMost !== null) return 'regrow'
  return keepAtLeast === null ? 'none' : 'keep'
}
