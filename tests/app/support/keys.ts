import type { Page } from '@playwright/test'

/**
 * Milliseconds for which a key is held down, to play the tests with a slow or a quick hand. A letter takes longer than a
 * label reader's 50 ms, so that the app takes it for a hand.
 */
const HAND_MS = Number(process.env['HAND_MS'] ?? 55)
/** No hand is so quick at a code: what a label reader could have typed is typed slowly enough by all. */
const CODE_MS = Math.max(HAND_MS, 55)

/** Types as a hand does. */
export async function type(page: Page, text: string): Promise<void> {
  const delay = /\d/.test(text) && !/\s/.test(text) ? CODE_MS : HAND_MS
  await page.keyboard.type(text, { delay })
}

/** Presses keys or chords one after the other, as a hand does: 'Enter', 'Control+Enter'. */
export async function press(page: Page, ...chords: readonly string[]): Promise<void> {
  for (const chord of chords) await page.keyboard.press(chord, { delay: HAND_MS })
}

/** A hand at the keyboard that counts its key presses. A chord counts each key held, so Ctrl+Enter is two. */
export class Keys {
  readonly #page: Page
  #pressed = 0

  constructor(page: Page) {
    this.#page = page
  }

  get pressed(): number {
    return this.#pressed
  }

  async type(text: string): Promise<void> {
    await type(this.#page, text)
    this.#pressed += keysOf(text)
  }

  async press(...chords: readonly string[]): Promise<void> {
    await press(this.#page, ...chords)
    for (const chord of chords) this.#pressed += chord.split('+').length
  }
}

/** Milliseconds from key to key of a label reader. */
const READER_MS = 5

/**
 * Types as a label reader does, then Enter. Every key says when it was pressed: on a busy machine keys that are only
 * sent off quickly come as slowly as a hand's. The first is pressed so many milliseconds from now. `stands` says what
 * stands on a key where the keyboard is not plain Latin.
 */
export async function scan(
  page: Page,
  code: string,
  { inMs = 0, stands = (letter: string) => letter } = {},
): Promise<void> {
  const devTools = await page.context().newCDPSession(page)
  const begun = Date.now() + inMs
  const sent = [...code, 'Enter'].flatMap((key, index) => {
    const pressed = {
      key: key === 'Enter' ? key : stands(key),
      windowsVirtualKeyCode: key === 'Enter' ? 13 : key.toUpperCase().charCodeAt(0),
      timestamp: (begun + index * READER_MS) / 1000,
    }
    const place = key === 'Enter' ? 'Enter' : `${/\d/.test(key) ? 'Digit' : 'Key'}${key.toUpperCase()}`
    const text = key === 'Enter' ? '\r' : stands(key)
    return [
      devTools.send('Input.dispatchKeyEvent', { type: 'keyDown', text, ...pressed, code: place }),
      devTools.send('Input.dispatchKeyEvent', { type: 'keyUp', ...pressed }),
    ]
  })
  await Promise.all(sent)
  await devTools.detach()
}

/** The key presses that typing a text takes: one for each character, two for a capital. */
export function keysOf(text: string): number {
  return [...text].reduce((sum, letter) => sum + (letter === letter.toLowerCase() ? 1 : 2), 0)
}

/** The key presses that rows of a spreadsheet take: every cell typed out, and one key to leave it. */
export function keysOfRows(rows: readonly (readonly string[])[]): number {
  return rows.flat().reduce((sum, cell) => sum + keysOf(cell) + 1, 0)
}
