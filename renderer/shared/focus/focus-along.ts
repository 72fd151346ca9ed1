import type { KeyboardEvent } from 'react'

type Keys = Readonly<Record<string, 1 | -1>>

export const UP_AND_DOWN: Keys = { ArrowUp: -1, ArrowDown: 1 }

/** The keys along a line: the one that points to where the script runs goes on. */
export function keysAlongLine(): Keys {
  const onward = document.documentElement.dir === 'rtl' ? -1 : 1
  return { ArrowLeft: onward === 1 ? -1 : 1, ArrowRight: onward }
}

/** Moves the focus along the links of a list by its arrow keys, from the one that has it. */
export function focusAlong(event: KeyboardEvent<HTMLElement>, keys: Keys, links = 'a'): void {
  const by = keys[event.key]
  const all = [...event.currentTarget.querySelectorAll<HTMLElement>(links)]
  const at = all.findIndex((each) => each.matches(':focus'))
  if (by === undefined || at < 0) return
  event.preventDefault()
  all[at + by]?.focus()
}
