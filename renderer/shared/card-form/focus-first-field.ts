/** Focuses the first field of a form as it opens, or its button where it has none; a ref callback. */
export function focusFirstField(form: HTMLElement | null): void {
  form?.querySelector<HTMLElement>('input, select, textarea, button')?.focus()
}
