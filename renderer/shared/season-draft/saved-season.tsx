import { OtherVisits } from '../table-form/other-visits.tsx'
import type { DraftVisit } from '../table-form/use-draft.ts'
import { type SeasonDraft, type SeasonStep, seasonInWords } from './season-draft.ts'

/** What another window left unfinished of a season, and a warning where the last change could not be kept. */
export function SavedSeason({ visit }: { readonly visit: DraftVisit<SeasonDraft, SeasonStep> }) {
  return (
    <>
      <OtherVisits visit={visit} inWords={seasonInWords} />
      {!visit.kept && (
        <p role="status">What is ticked and planned could not be kept just now. Do not close the window.</p>
      )}
    </>
  )
}
