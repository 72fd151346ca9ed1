import type { KeyboardEvent } from 'react'

export const UP_AND_DOWN = { ArrowUp: -1, ArrowDown: 1 } as const
export const LEFT_AND_RIGHT = { ArrowLeft: -1, ArrowRight: 1 } as const

/** Moves the focus along the links of a list by its arrow keys, from the one that has it. */
export function focusAlong(
  event: KeyboardEvent<HTMLElement>,
  keys: Readonly<Record<string, 1 | -1>>,
  links = 'a',
): void {
  const by = keys[event.key]
  const all = [...event.currentTarget.querySelectorAll<HTMLElement>(links)]
  const at = all.findIndex((each) => each.matches(':focus'))
  if (by === undefined || at < 0) return
  event.preventDefault()
  all[at + by]?.focus()
}
