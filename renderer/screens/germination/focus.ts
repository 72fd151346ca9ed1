/** Focuses what is to be done next on a card: its first count, its first field, or else its heading. */
export function focusNext(card: HTMLElement | null): void {
  const next = card?.querySelector<HTMLElement>('[data-next] input, [data-next] button')
  ;(next ?? card?.querySelector<HTMLElement>('h2'))?.focus()
}
