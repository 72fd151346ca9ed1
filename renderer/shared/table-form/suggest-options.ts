import type { ReactNode } from 'react'
import { fold } from '../../../db/domain/shared/fold.ts'
import { type Message, message } from '../../../db/messages/message.ts'

/** One thing that was found, with what tells it apart from others of its name. */
export interface Suggestion<T> {
  readonly key: string
  readonly name: string
  readonly detail: ReactNode
  readonly item: T
}

/** A choice that is always there, such as 'nobody knows'. */
export interface StandingChoice {
  readonly key: string
  readonly label: string
  readonly onPick: () => void
}

export type SuggestOption<T> =
  | { readonly kind: 'found'; readonly key: string; readonly suggestion: Suggestion<T> }
  | {
      readonly kind: 'add'
      readonly key: string
      readonly label: string
      readonly text: string
      readonly seldom: boolean
    }
  | { readonly kind: 'standing'; readonly key: string; readonly choice: StandingChoice }

/** Adding a typed text as something new. */
export interface AddNew {
  readonly label: (text: string) => string
  /** Whether it is seldom meant: then it is never taken unasked, nor offered beside what bears that very name. */
  readonly seldom?: boolean
}

/** What the list offers: what was found, then adding the text as new, then the standing choices. */
export function suggestOptions<T>(
  found: readonly Suggestion<T>[],
  text: string,
  addNew: AddNew | undefined,
  standing: readonly StandingChoice[],
): readonly SuggestOption<T>[] {
  const name = text.trim()
  const seldom = addNew?.seldom === true
  const isThere = seldom && found.some((suggestion) => fold(suggestion.name) === fold(name))
  return [
    ...found.map((suggestion) => ({ kind: 'found' as const, key: suggestion.key, suggestion })),
    ...(addNew && name !== '' && !isThere
      ? [{ kind: 'add' as const, key: 'add', label: addNew.label(name), text: name, seldom }]
      : []),
    ...standing.map((choice) => ({ kind: 'standing' as const, key: choice.key, choice })),
  ]
}

/**
 * The option that Enter takes before any arrow was pressed; -1 for none.
 *
 * The first that was found, or else adding it as new, unless that is seldom meant. A standing choice only where nothing
 * was typed: a name that nobody bears must not turn into 'nobody'.
 */
export function firstActive<T>(options: readonly SuggestOption<T>[], text: string): number {
  const first = options[0]
  if (first === undefined) return -1
  const isUnasked = first.kind === 'add' ? first.seldom : first.kind === 'standing' && text.trim() !== ''
  return isUnasked ? -1 : 0
}

/** The option an arrow leads to: round at both ends. */
export function movedActive(active: number, by: 1 | -1, count: number): number {
  if (count === 0) return -1
  if (active < 0) return by > 0 ? 0 : count - 1
  return (active + by + count) % count
}

/** The list in words, for reading aloud: how much was found, and what else can be done. */
export function spokenOptions<T>(options: readonly SuggestOption<T>[]): (Message | string)[] {
  const found = options.filter((option) => option.kind === 'found').length
  const rest = options.flatMap((option) =>
    option.kind === 'found' ? [] : [option.kind === 'add' ? option.label : option.choice.label],
  )
  return [message('table.found', { count: found }), ...rest]
}
