import type { Page } from '@playwright/test'
import { calmOf } from './calm.ts'
import { open } from './open.ts'

/** Buttons that lead out of this collection, or out of the window, by the words they begin with. */
const NOT_SENT = /^(Start$|Restore it|Erase for good)/
/** Of buttons that differ by a name or a day only, so many are pressed. */
const MOST_ALIKE = 2

const BUTTONS = ':is(main, .strip-place, .foot-line) :is(button, summary)'

/** Marks the buttons that can be pressed with a number each, and says what each is called. */
const LIST_BUTTONS = `(() => [...document.querySelectorAll('${BUTTONS}')]
  .filter((each) => each.getClientRects().length > 0 && !each.matches(':disabled, [aria-disabled=true]'))
  .map((each, index) => {
    each.dataset.walked = String(index)
    return (each.getAttribute('aria-label') ?? each.textContent).trim()
  }))()`

/** What is wrong with the place of the focus; empty where it is a place from which work goes on. */
const WRONG_FOCUS = `(() => {
  const at = document.activeElement
  if (at === null || at === document.body) return 'on nothing'
  if (at.matches('main')) return 'on the whole screen'
  if (at.closest('.rail') !== null) return 'on the rail'
  return at.getClientRects().length === 0 ? 'on something that is not drawn' : ''
})()`

const IN_A_FORM = `document.activeElement?.closest('form.card-form, form.start-collection') !== null`

/** Fills what stands empty in the form that has the focus with something that fits its label. */
const FILL_FORM = `(() => {
  const form = document.activeElement.closest('form')
  const give = (field, value) => {
    const kind = { INPUT: HTMLInputElement, SELECT: HTMLSelectElement, TEXTAREA: HTMLTextAreaElement }[field.tagName]
    Object.getOwnPropertyDescriptor(kind.prototype, 'value').set.call(field, value)
    field.dispatchEvent(new Event(field.tagName === 'SELECT' ? 'change' : 'input', { bubbles: true }))
  }
  for (const field of form.querySelectorAll('input, textarea, select')) {
    const label = field.labels?.[0]?.textContent ?? ''
    if (field.value !== '' || ['checkbox', 'radio', 'file', 'date'].includes(field.type)) continue
    if (field.tagName === 'SELECT') give(field, field.options[field.options.length - 2]?.value ?? '')
    else if (/how much|found$|into|each/i.test(label)) give(field, '3 seeds')
    else if (/%|°|mm|number|days|bed|most|metres|grams|gram|plants|side by side|below/i.test(label)) give(field, '7')
    else give(field, 'looked at, and good')
  }
  form.querySelector('[type=submit]')?.focus()
  return form.querySelector('[type=submit]')?.textContent.trim() ?? ''
})()`

/** A hand that presses buttons by the keyboard and looks each time where the focus is. */
export class ButtonWalk {
  readonly wrong: string[] = []
  pressed = 0
  readonly #page: Page
  readonly #calm: () => Promise<void>

  constructor(page: Page) {
    this.#page = page
    this.#calm = calmOf(page)
  }

  async go(path: string): Promise<void> {
    await open(this.#page, '/nowhere')
    await open(this.#page, path)
    await this.#page.locator('main :is(h1, h2)').first().waitFor({ state: 'attached' })
    await this.#calm()
  }

  /** Every button of a screen: pressed, and where it opens a form, stepped back from, filled and sent. */
  async walk(path: string): Promise<void> {
    await this.go(path)
    const alike = new Map<string, number>()
    for (const name of (await this.#names()).toSorted()) {
      const kind = name.replace(/\d+|[:‘].*/g, '')
      const seen = alike.get(kind) ?? 0
      alike.set(kind, seen + 1)
      if (seen >= MOST_ALIKE) continue
      await this.go(path)
      await this.act(path, name)
    }
  }

  /** Some buttons of a screen, by the words they begin with. */
  async only(path: string, names: readonly string[]): Promise<void> {
    await this.go(path)
    for (const name of names) {
      const before = this.pressed
      await this.act(path, name)
      if (this.pressed === before) this.wrong.push(`${path}: there is no button ${name}`)
    }
  }

  /** Presses a button of the screen that is open. A form that it opens is stepped back from, then filled and sent. */
  async act(path: string, name: string): Promise<void> {
    if (NOT_SENT.test(name) || !(await this.#press(name))) return
    await this.#judge(`${path}: ${name}`)
    if (!(await this.#page.evaluate<boolean>(IN_A_FORM))) return
    await this.#page.keyboard.press('Escape')
    await this.#calm()
    await this.#judge(`${path}: ${name}, stepped back`)
    if (!(await this.#press(name))) return
    const word = await this.#page.evaluate<string>(FILL_FORM)
    await this.#calm()
    if (word === '' || NOT_SENT.test(word)) return
    await this.#page.keyboard.press('Enter')
    await this.#calm()
    await this.#judge(`${path}: ${name}, sent by ${word}`)
  }

  #names(): Promise<readonly string[]> {
    return this.#page.evaluate<readonly string[]>(LIST_BUTTONS)
  }

  /** False where the button is not there any more. */
  async #press(name: string): Promise<boolean> {
    const at = (await this.#names()).findIndex((each) => each.startsWith(name))
    if (at < 0) return false
    await this.#page.locator(`[data-walked="${at}"]`).focus()
    await this.#page.keyboard.press('Enter')
    this.pressed += 1
    await this.#calm()
    return true
  }

  async #judge(after: string): Promise<void> {
    const wrong = await this.#page.evaluate<string>(WRONG_FOCUS)
    if (wrong !== '') this.wrong.push(`${after}: the focus is ${wrong}`)
  }
}
