/** Focuses the first field of a form as it opens; a ref callback. */
export function focusFirstField(form: HTMLElement | null): void {
  form?.querySelector<HTMLElement>('input, select, textarea')?.focus()
}

/** Focuses what is to be done next on a card: its first open step, or taking it in, or else its heading. */
export function focusNext(card: HTMLElement | null): void {
  const next = card?.querySelector<HTMLElement>('[data-next]:not(:disabled)')
  ;(next ?? card?.querySelector<HTMLElement>('h2'))?.focus()
}
