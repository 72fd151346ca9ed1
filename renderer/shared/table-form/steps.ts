/**
 * Going on from field to field in a table form.
 *
 * A step is an element with `data-step`; the order is that of the page. Steps that are disabled or not drawn are passed.
 */
export const STEP = 'data-step'

const FIELDS = 'input, textarea, select, button, [tabindex="0"]'

/** Every step inside `form` that can take the focus now, in page order. */
export function stepsOf(form: HTMLElement): readonly HTMLElement[] {
  return [...form.querySelectorAll<HTMLElement>(`[${STEP}]`)].filter(
    (step) => !step.hasAttribute('disabled') && step.getClientRects().length > 0,
  )
}

/** The step that `element` is, or belongs to: a choice beneath a field counts as that field. */
export function stepAt(form: HTMLElement, element: Element): HTMLElement | null {
  const own = element.closest<HTMLElement>(`[${STEP}]`)
  if (own && form.contains(own)) return own
  const group = element.closest('[data-step-group]')
  return group && form.contains(group) ? group.querySelector<HTMLElement>(`[${STEP}]`) : null
}

/** Moves to the step after (1) or before (-1) `element`. False when there is none, so that the form may end. */
export function moveFrom(form: HTMLElement, element: Element, by: 1 | -1): boolean {
  const steps = stepsOf(form)
  const here = stepAt(form, element)
  const at = here ? steps.indexOf(here) : -1
  const next = at < 0 ? undefined : steps[at + by]
  if (!next) return false
  focusStep(next)
  return true
}

/** Focuses a step by its name and selects what is in it. False when it is not on the page. */
export function focusStepNamed(form: HTMLElement, name: string): boolean {
  const step = stepsOf(form).find((each) => each.getAttribute(STEP) === name)
  if (!step) return false
  focusStep(step)
  return true
}

function focusStep(step: HTMLElement) {
  const target = step.matches(FIELDS) ? step : (step.querySelector<HTMLElement>(FIELDS) ?? step)
  target.focus()
  if (target instanceof HTMLInputElement && target.type !== 'checkbox' && target.type !== 'radio') {
    target.select()
  }
}
