import type { IsolationMethod } from '../../../db/domain/season-plan/isolation-method.ts'
import { type Message, message } from '../../../db/messages/message.ts'

/** One accession in one garden, as it stands in a plan that is being made. */
export interface PlannedChoice {
  readonly accessionId: number
  readonly siteId: number
  readonly way: IsolationMethod
}

/** What is ticked to be grown and the plan on the table, kept tick by tick until the list and the plan are saved. */
export interface SeasonDraft {
  readonly chosen: readonly number[]
  /** For the season list. */
  readonly note: string
  /** Null: the plan saved last, unchanged. */
  readonly choices: readonly PlannedChoice[] | null
  /** Accessions that stay where they are when a plan is made anew. */
  readonly locked: readonly number[]
}

export type SeasonStep =
  | { readonly kind: 'ticked' | 'locked'; readonly accessionId: number }
  | { readonly kind: 'noted'; readonly note: string }
  | { readonly kind: 'list-saved' | 'plan-saved' }
  | { readonly kind: 'planned'; readonly choices: readonly PlannedChoice[] }
  | {
      readonly kind: 'altered'
      readonly accessionId: number
      /** Null: taken out. */
      readonly part: Partial<PlannedChoice> | null
      /** The plan saved last, which is altered where none is on the table. */
      readonly saved: readonly PlannedChoice[]
    }

export function emptySeason(): SeasonDraft {
  return { chosen: [], note: '', choices: null, locked: [] }
}

export function stepSeason(draft: SeasonDraft, step: SeasonStep): SeasonDraft {
  switch (step.kind) {
    case 'ticked':
      return { ...draft, chosen: toggled(draft.chosen, step.accessionId) }
    case 'locked':
      return { ...draft, locked: toggled(draft.locked, step.accessionId) }
    case 'noted':
      return { ...draft, note: step.note }
    case 'list-saved':
      return { ...draft, chosen: [], note: '' }
    case 'plan-saved':
      return { ...draft, choices: null }
    case 'planned':
      return { ...draft, choices: step.choices }
    case 'altered': {
      const { accessionId, part, saved } = step
      const choices = (draft.choices ?? saved).flatMap((choice) =>
        choice.accessionId !== accessionId ? [choice] : part === null ? [] : [{ ...choice, ...part }],
      )
      return { ...draft, choices }
    }
  }
}

export function isBlankSeason({ chosen, note, choices, locked }: SeasonDraft): boolean {
  return chosen.length === 0 && note.trim() === '' && choices === null && locked.length === 0
}

/** What an unfinished season holds: what is ticked and what is planned. */
export function seasonInWords({ chosen, choices }: SeasonDraft): Message {
  const ticked = chosen.length
  if (choices === null)
    return ticked === 0 ? message('season.draft-noted') : message('season.draft-ticked', { ticked })
  const planned = choices.length
  return ticked === 0
    ? message('season.draft-planned', { planned })
    : message('season.draft-both', { ticked, planned })
}

function toggled(ids: readonly number[], id: number): readonly number[] {
  return ids.includes(id) ? ids.filter((other) => other !== id) : [...ids, id]
}
