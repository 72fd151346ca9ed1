import { useKeptForm } from '../../shared/card-form/use-kept-form.ts'

/** The accessions ticked to be grown, and the note for the list, kept while other screens are looked at. */
export function useChosen() {
  const { typed, change, letGo } = useKeptForm('season-list', { chosen: [] as readonly number[], note: '' })
  return {
    chosen: typed.chosen,
    note: typed.note,
    setNote: (note: string) => change({ note }),
    toggle: (accessionId: number) =>
      change({
        chosen: typed.chosen.includes(accessionId)
          ? typed.chosen.filter((id) => id !== accessionId)
          : [...typed.chosen, accessionId],
      }),
    letGo,
  }
}

export type Chosen = ReturnType<typeof useChosen>
