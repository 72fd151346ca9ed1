/** Focuses what is to be done next on a card: its first open step, or taking it in, or else its heading. */
export function focusNext(card: HTMLElement | null): void {
  const next = card?.querySelector<HTMLElement>('[data-next]:not(:disabled)')
  ;(next ?? card?.querySelector<HTMLElement>('h2'))?.focus()
}
