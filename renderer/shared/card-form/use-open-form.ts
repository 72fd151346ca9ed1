import { type RefObject, useRef, useState } from 'react'

interface OpenForm<N extends string> {
  readonly open: N | null
  /** For the element that holds the buttons and the form. */
  readonly around: RefObject<HTMLElement | null>
  /** What the button needs that opens and closes a form. */
  readonly button: (name: N) => { readonly 'aria-expanded': boolean; readonly onClick: () => void }
  /** Closes the form of that name. */
  readonly close: (name: N) => void
}

/**
 * Which of several forms is open under its button.
 *
 * A form may close long after the keeper sent it and went on. Then another form stays open, and the focus stays where
 * it is; only a focus that would be lost with the form goes to its button.
 */
export function useOpenForm<N extends string>(): OpenForm<N> {
  const [open, setOpen] = useState<N | null>(null)
  const around = useRef<HTMLElement>(null)
  return {
    open,
    around,
    button: (name) => ({
      'aria-expanded': open === name,
      onClick: () => setOpen(open === name ? null : name),
    }),
    close: (name) => {
      const at = document.activeElement
      // A button that was pressed and cannot be pressed meanwhile has lost the focus already.
      const lost = at === null || at === document.body || around.current?.querySelector('form')?.contains(at)
      if (lost === true) around.current?.querySelector<HTMLElement>('[aria-expanded="true"]')?.focus()
      setOpen((now) => (now === name ? null : now))
    },
  }
}
