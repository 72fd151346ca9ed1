/** Focuses the first field of a form as it opens, or its button where it has none; a ref callback. */
export function focusFirstField(form: HTMLElement | null): void {
  form?.querySelector<HTMLElement>('input, select, textarea, button')?.focus()
}

/**
 * Focuses what steps back from a form that is to be read before it is sent, as it opens: the key that opened it, held a
 * moment too long, must not send it. A ref callback.
 */
export function focusWayBack(form: HTMLElement | null): void {
  form?.querySelector<HTMLElement>('button[type="button"]')?.focus()
}
