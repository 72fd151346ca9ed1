import { type DraftVisit, useDraft } from '../table-form/use-draft.ts'
import { emptySeason, isBlankSeason, type SeasonDraft, type SeasonStep, stepSeason } from './season-draft.ts'

const RULES = { kind: 'season', blank: emptySeason, step: stepSeason, isBlank: isBlankSeason } as const

/** The season being put together at this window: one draft for what to regrow and for the plan. */
export function useSeason(): DraftVisit<SeasonDraft, SeasonStep> {
  return useDraft<SeasonDraft, SeasonStep>(RULES)
}
