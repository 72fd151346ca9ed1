import { useCallback, useState } from 'react'

export interface OpenForm<N extends string> {
  readonly open: N | null
  /** What the button needs that opens and closes a form. */
  readonly button: (name: N) => { readonly 'aria-expanded': boolean; readonly onClick: () => void }
  readonly show: (name: N) => void
  /** Closes the form of that name. */
  readonly close: (name: N) => void
  readonly closeAny: () => void
}

/**
 * Which of several forms is open under its button.
 *
 * A form may close long after the keeper sent it and went on: then another form stays open.
 */
export function useOpenForm<N extends string>(): OpenForm<N> {
  const [open, setOpen] = useState<N | null>(null)
  return {
    open,
    button: (name) => ({
      'aria-expanded': open === name,
      onClick: () => setOpen(open === name ? null : name),
    }),
    show: setOpen,
    close: (name) => setOpen((now) => (now === name ? null : now)),
    closeAny: useCallback(() => setOpen(null), []),
  }
}
