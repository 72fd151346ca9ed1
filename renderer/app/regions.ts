/** The parts of the window that F6 goes round, and what of each takes the focus where nothing of it had it before. */
const REGIONS = [
  { part: '.rail', first: '[aria-current=page], a' },
  { part: 'main', first: '[data-step], input, select, textarea, button, a[href], [tabindex="0"]' },
  { part: '.foot-line', first: 'button, a[href]' },
] as const

const MAIN = 1
const lastIn = new WeakMap<Element, HTMLElement>()

/** Goes to the next part of the window (1) or the one before (-1), and there to where the focus last was. */
export function goRound(by: 1 | -1): void {
  const here = document.activeElement
  const found = REGIONS.findIndex(({ part }) => here?.closest(part))
  const at = found < 0 ? MAIN : found
  const from = here?.closest(REGIONS[at]?.part ?? 'main')
  if (from && here instanceof HTMLElement) lastIn.set(from, here)
  const { part, first } = REGIONS[(at + by + REGIONS.length) % REGIONS.length] ?? REGIONS[0]
  const region = document.querySelector(part)
  if (region === null) return
  const last = part === '.rail' ? undefined : lastIn.get(region)
  const target = last?.isConnected
    ? last
    : [...region.querySelectorAll<HTMLElement>(first)].find(canTakeFocus)
  target?.focus()
}

function canTakeFocus(element: HTMLElement): boolean {
  return !element.hasAttribute('disabled') && element.getClientRects().length > 0
}

/** Moves along the words of the rail from the one that has the focus. */
export function alongRail(rail: Element, by: 1 | -1): void {
  const words = [...rail.querySelectorAll<HTMLElement>('.rail-word')]
  const at = words.findIndex((word) => word.matches(':focus'))
  words[at + by]?.focus()
}
