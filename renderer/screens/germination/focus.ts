/** Focuses what is to be done next on a card: its first count, its first field, or else its heading. */
export function focusNext(card: HTMLElement | null): void {
  const next = card?.querySelector<HTMLElement>('[data-next] input, [data-next] button')
  ;(next ?? card?.querySelector<HTMLElement>('h2'))?.focus()
}

/** Focuses the first field of a form as it opens, or its button where it has none; a ref callback. */
export function focusFirstField(form: HTMLElement | null): void {
  form?.querySelector<HTMLElement>('input, select, textarea, button')?.focus()
}
