import { OtherVisits } from '../table-form/other-visits.tsx'
import type { KeptVisit } from '../table-form/use-draft.ts'
import { type SeasonDraft, type SeasonStep, seasonInWords } from './season-draft.ts'

/** What another window left unfinished of a season, and a warning where the last change could not be kept. */
export function SeasonKept({ visit }: { readonly visit: KeptVisit<SeasonDraft, SeasonStep> }) {
  return (
    <>
      <OtherVisits
        others={visit.others}
        inWords={seasonInWords}
        onGoOnWith={visit.goOnWith}
        onLetGo={visit.letGo}
      />
      {!visit.kept && (
        <p role="status">What is ticked and planned could not be kept just now. Do not close the window.</p>
      )}
    </>
  )
}
