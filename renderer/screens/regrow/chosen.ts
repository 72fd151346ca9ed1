import type { SeasonDraft, SeasonStep } from '../../shared/season-draft/season-draft.ts'

/** The accessions ticked to be grown, and the note for the list. */
export function chosenOf({ chosen, note }: SeasonDraft, dispatch: (step: SeasonStep) => void) {
  return {
    chosen,
    note,
    setNote: (typed: string) => dispatch({ kind: 'noted', note: typed }),
    toggle: (accessionId: number) => dispatch({ kind: 'ticked', accessionId }),
    discard: () => dispatch({ kind: 'list-saved' }),
  }
}

export type Chosen = ReturnType<typeof chosenOf>
