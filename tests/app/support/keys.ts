import type { Page } from '@playwright/test'

/** Slower than a label reader, so that the app takes it for a hand. */
const HAND_MS = 45

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
    await this.#page.keyboard.type(text, { delay: HAND_MS })
    this.#pressed += keysOf(text)
  }

  /** Presses one key or chord: 'Enter', 'Control+Enter'. */
  async press(...chords: readonly string[]): Promise<void> {
    for (const chord of chords) {
      await this.#page.keyboard.press(chord, { delay: HAND_MS })
      this.#pressed += chord.split('+').length
    }
  }
}

/**
 * Types as a label reader does: every key sent off before the first is answered, then Enter. Waiting for each would take
 * longer than a label reader does wherever the machine is busy.
 */
export async function scan(page: Page, code: string): Promise<void> {
  await Promise.all([...code, 'Enter'].map((key) => page.keyboard.press(key)))
}

/** The key presses that typing a text takes: one for each character, two for a capital. */
export function keysOf(text: string): number {
  return [...text].reduce((sum, letter) => sum + (letter === letter.toLowerCase() ? 1 : 2), 0)
}

/** The key presses that rows of a spreadsheet take: every cell typed out, and one key to leave it. */
export function keysOfRows(rows: readonly (readonly string[])[]): number {
  return rows.flat().reduce((sum, cell) => sum + keysOf(cell) + 1, 0)
}
