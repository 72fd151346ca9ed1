import type { PopulationGoal } from '../../../db/domain/needs/population-goal.ts'

/** What a regrowing is for, in the keeper's words. */
export const GRADE_WORDS: Readonly<Record<PopulationGoal, string>> = {
  quality: 'sound seed',
  maintenance: 'the variety as it is',
  conservation: 'its rarer traits as well',
}

export const GRADE_CHOICES = (['quality', 'maintenance', 'conservation'] as const).map((value) => ({
  value,
  label: `${value}: ${GRADE_WORDS[value]}`,
}))
