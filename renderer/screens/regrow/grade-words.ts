import { GRADES } from '../../../db/domain/needs/population-goal.ts'
import type { Texts } from '../../../db/messages/texts.ts'

/** What a regrowing can be for, to choose from. */
export function gradeChoices(t: Texts['text']) {
  return GRADES.map((value) => ({ value, label: t(`needs.grade.${value}`) }))
}
