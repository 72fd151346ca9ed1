/**
 * Going on from field to field in a table form.
 *
 * A step is an element with `data-step`; the order is that of the page. Steps that are disabled or not drawn are passed.
 */
export const STEP = 'data-step'

const FIELDS = 'input,textarea,select,button,[tabindex="0"]'

/** Marks a part of a form whose steps are gone through by themselves, such as what holds for a whole visit. */
export const STEPS_APART = 'data-steps-apart'

/** Every step inside `form` that can take the focus now, in page order. */
function stepsOf(form: HTMLElement): readonly HTMLElement[] {
  return [...form.querySelectorAll<HTMLElement>(`[${STEP}]`)].filter(
    (step) => !step.hasAttribute('disabled') && step.getClientRects().length > 0,
  )
}

/** The step that `element` is, or belongs to: a choice beneath a field counts as that field. */
function stepAt(form: HTMLElement, element: Element): HTMLElement | null {
  const own = element.closest<HTMLElement>(`[${STEP}]`)
  if (own && form.contains(own)) return own
  const group = element.closest('[data-step-group]')
  return group && form.contains(group) ? group.querySelector<HTMLElement>(`[${STEP}]`) : null
}

/**
 * Moves to the step after (1) or before (-1) `element`. Where there is none it says so, that the form may end or that a
 * part gone through by itself does; 'elsewhere' where the element is no part of the way.
 */
export function moveFrom(
  form: HTMLElement,
  element: Element,
  by: 1 | -1,
): 'moved' | 'end' | 'end-apart' | 'elsewhere' {
  const here = stepAt(form, element)
  if (here === null) return 'elsewhere'
  const apart = here.closest(`[${STEPS_APART}]`)
  const steps = stepsOf(form).filter((step) => step.closest(`[${STEPS_APART}]`) === apart)
  const next = steps[steps.indexOf(here) + by]
  if (!next) return apart === null ? 'end' : 'end-apart'
  focusStep(next)
  return 'moved'
}

/** Focuses a step by its name and selects what is in it. False when it is not on the page. */
export function focusStepNamed(form: HTMLElement, name: string): boolean {
  const step = stepsOf(form).find((each) => each.getAttribute(STEP) === name)
  if (!step) return false
  focusStep(step)
  return true
}

/** Focuses the first step of the page that is one of these. */
export function focusFirstStep(form: HTMLElement, names: readonly string[]): void {
  const first = stepsOf(form).find((each) => names.includes(each.getAttribute(STEP) ?? ''))
  if (first) focusStep(first)
}

function focusStep(step: HTMLElement) {
  const target = step.matches(FIELDS) ? step : (step.querySelector<HTMLElement>(FIELDS) ?? step)
  target.focus()
  if (target instanceof HTMLInputElement && target.type !== 'checkbox' && target.type !== 'radio') {
    target.select()
  }
}
