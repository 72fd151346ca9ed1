import { POPULATION_GOALS } from '../../../db/domain/needs/population-goal.ts'
import type { Texts } from '../../../db/messages/texts.ts'

/** What a regrowing can be for, to choose from. */
export function goalChoices(t: Texts['text']) {
  return POPULATION_GOALS.map((value) => ({ value, label: t(`needs.grade.${value}`) }))
}
