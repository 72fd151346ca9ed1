/** What had the focus, with the elements it stood in, nearest first: they are not known any more once it is gone. */
interface Place {
  readonly element: HTMLElement
  readonly around: readonly HTMLElement[]
}

const ROW = 'li, tr, [role=row]'
const GRID = '[role=grid]'
const HEADING = 'h1, h2, h3, h4'
const TAKES_FOCUS = 'a[href], button, input, select, textarea, summary, [tabindex="0"]'

/** Where the focus was when a form opened. */
const openers = new WeakMap<Element, Place>()
let last: Place | null = null
let putThere: Element | null = null

/** Notes where the focus is now. */
export function noteFocus(element: HTMLElement): void {
  last = { element, around: ancestorsOf(element) }
}

/**
 * Focuses the first field of a form as it opens, and keeps what opened it. Where there is nothing to type, what steps
 * back is focused: the key that opened it, held a moment too long, must not send it. A ref callback.
 */
export function openForm(form: HTMLElement | null): void {
  if (form === null) return
  if (last !== null) openers.set(form, last)
  const first =
    form.querySelector<HTMLElement>('input, select, textarea') ??
    form.querySelector<HTMLElement>('button[type="button"]')
  first?.focus()
}

/** Notes that the keeper pressed a key or clicked: where the focus is now is where they want it. */
export function noteAct(): void {
  putThere = null
  if (document.activeElement === document.body) last = null
}

/** Whether the focus is nowhere, or only where it was put when it got lost: a screen may take it where it belongs. */
export function focusIsFree(): boolean {
  const at = document.activeElement
  return at === null || at === document.body || at === putThere
}

/**
 * Puts the focus back where what had it was taken off the page: on what opened its form, else on what is left of its
 * row or on the next row, else on the heading above.
 */
export function restoreFocus(changes: readonly MutationRecord[]): void {
  if (last === null || last.element.isConnected || document.activeElement !== document.body) return
  const lost = last
  const change = changes.findLast(
    ({ target, removedNodes }) =>
      target.isConnected && [...removedNodes].some((node) => node.contains(lost.element)),
  )
  const target = gridOf(lost) ?? openerOf(lost) ?? (change && besideRow(lost, change)) ?? headingAbove(lost)
  if (target === null) return
  if (target.matches(HEADING)) target.tabIndex = -1
  target.focus({ preventScroll: target.matches(GRID) })
  putThere = target
}

function ancestorsOf(element: HTMLElement): readonly HTMLElement[] {
  const around: HTMLElement[] = []
  for (let each = element.parentElement; each !== null; each = each.parentElement) around.push(each)
  return around
}

/** A list that draws only the rows in sight takes the focus of one that was scrolled away. */
function gridOf(lost: Place): HTMLElement | null {
  return lost.around.find((each) => each.isConnected && each.matches(GRID)) ?? null
}

/** What opened the form that is gone, or what stands in its place by the same name or of the same kind. */
function openerOf(lost: Place): HTMLElement | null {
  const form = lost.around.find((each) => each.matches('form') && !each.isConnected)
  const opener = form && openers.get(form)
  if (opener === undefined) return null
  if (opener.element.isConnected) return takesFocus(opener.element) ? opener.element : null
  const itsOpener = openerOf(opener)
  if (itsOpener !== null) return itsOpener
  const [parent] = opener.around
  const there = opener.around.find((each) => each.isConnected)
  const alike = focusablesIn(there).filter((each) => each.tagName === opener.element.tagName)
  const name = opener.element.textContent
  return (
    alike.find(({ textContent }) => name !== '' && textContent === name) ??
    alike.find((each) => each.parentElement === parent && each.className === opener.element.className) ??
    null
  )
}

/** What comes next in the row that is left; else the same thing in the next row, or in the one before. */
function besideRow(lost: Place, change: MutationRecord): HTMLElement | null {
  const around = change.target as HTMLElement
  const row = around.closest<HTMLElement>(ROW)
  if (row !== null) {
    const left = focusablesIn(row)
    const next = left.find((each) => follows(change.nextSibling, each)) ?? left.at(-1)
    if (next !== undefined) return next
  } else if (![...change.removedNodes].some((node) => node instanceof Element && node.matches(ROW)))
    return null
  const after = row?.nextElementSibling ?? elementAt(change.nextSibling)
  const before = row?.previousElementSibling ?? elementAt(change.previousSibling)
  return inRows(after, 'nextElementSibling', lost) ?? inRows(before, 'previousElementSibling', lost)
}

function inRows(
  first: Element | null,
  way: 'nextElementSibling' | 'previousElementSibling',
  lost: Place,
): HTMLElement | null {
  for (let row = first; row !== null; row = row[way]) {
    const there = focusablesIn(row)
    const found = there.find(({ className }) => className === lost.element.className) ?? there[0]
    if (found !== undefined) return found
  }
  return null
}

/** The heading of the nearest part that still stands; on a part without any, that of the screen. */
function headingAbove(lost: Place): HTMLElement | null {
  for (const part of lost.around) {
    if (!part.isConnected || part === document.body) continue
    const heading = [...part.querySelectorAll<HTMLElement>(HEADING)].find(isDrawn)
    if (heading !== undefined) return heading
  }
  return document.querySelector<HTMLElement>(`main :is(${HEADING})`)
}

function focusablesIn(part: Element | undefined): readonly HTMLElement[] {
  return [...(part?.querySelectorAll<HTMLElement>(TAKES_FOCUS) ?? [])].filter(takesFocus)
}

function takesFocus(element: HTMLElement): boolean {
  return isDrawn(element) && (element.tabIndex >= 0 || element.matches('a')) && !element.matches(':disabled')
}

function isDrawn(element: HTMLElement): boolean {
  return element.getClientRects().length > 0
}

function follows(mark: Node | null, element: Element): boolean {
  if (mark === null || !mark.isConnected) return false
  return (
    mark.contains(element) || (mark.compareDocumentPosition(element) & Node.DOCUMENT_POSITION_FOLLOWING) !== 0
  )
}

function elementAt(node: Node | null): Element | null {
  if (node === null || !node.isConnected) return null
  if (node instanceof CharacterData) return node.nextElementSibling
  return node instanceof Element ? node : null
}
