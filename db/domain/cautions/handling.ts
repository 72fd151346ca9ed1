import { type Message, message } from '../../messages/message.ts'
import type { CautionKind } from '../shared/closed-sets.ts'
import { CAUTION_RULES } from './inheritance.ts'

/** What must be minded with seed of some cautions before it is tested or thrown away, each once. */
export function handlingTold(cautions: readonly CautionKind[], doing: 'test' | 'discard'): Message[] {
  return [...new Set(cautions)].map((caution) => handlingOf(caution, doing)).filter((told) => told !== null)
}

/**
 * How seed with a caution is tested or thrown away; null where it is like any other.
 *
 * Treated: gloves, and away from food, feed and compost, as labels of treated seed say (common practice, no source). Pests: shut
 * in and frozen. Regulated: destroyed so that it cannot grow. Toxic: washed hands. Common practice, no source; local rules decide.
 */
export function handlingOf(caution: CautionKind, doing: 'test' | 'discard'): Message | null {
  if (CAUTION_RULES[caution][doing] === 'as-any') return null
  switch (caution) {
    case 'treated':
      return message(`handling.${doing}-treated`)
    case 'pests-seen':
      return message(`handling.${doing}-pests-seen`)
    case 'toxic':
      return message(`handling.${doing}-toxic`)
    case 'regulated':
      return message('handling.discard-regulated')
    case 'protected-variety':
    case 'possible-cross':
      return null
  }
}
