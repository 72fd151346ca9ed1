import { useTexts } from '../format/use-texts.ts'
import { OtherVisits } from '../table-form/other-visits.tsx'
import type { DraftVisit } from '../table-form/use-draft.ts'
import { type SeasonDraft, type SeasonStep, seasonInWords } from './season-draft.ts'

/** What another window left unfinished of a season, and a warning where the last change could not be kept. */
export function SavedSeason({ visit }: { readonly visit: DraftVisit<SeasonDraft, SeasonStep> }) {
  const { t, say } = useTexts()
  return (
    <>
      <OtherVisits visit={visit} inWords={(draft) => say(seasonInWords(draft))} />
      {!visit.kept && <p role="status">{t('season.draft-not-kept')}</p>}
    </>
  )
}
