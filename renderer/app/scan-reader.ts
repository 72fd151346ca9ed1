const LEAST_LETTERS = 4
const MOST_PER_LETTER_MS = 50
const PAUSE_MS = 250

/** What a key means: the first letter after a pause, the end of a scan, or nothing of interest. */
export type Heard = { readonly kind: 'nothing' | 'first' } | { readonly kind: 'scan'; readonly text: string }

export interface ScanReader {
  /** Hears one key, with the time it was pressed in milliseconds. */
  hear(key: string, at: number): Heard
}

const NOTHING: Heard = { kind: 'nothing' }

/**
 * Tells a label reader, which types as a keyboard does, from a hand: four letters or more without a blank, at least one
 * of them a digit, then Enter, all within 50 ms a letter and without a pause. No hand types like that; a slow machine
 * may still hand over single letters late.
 */
export function createScanReader(): ScanReader {
  let typed = ''
  let begun = Number.NEGATIVE_INFINITY
  let last = Number.NEGATIVE_INFINITY
  return {
    hear(key, at) {
      const inOneGo = at - last <= PAUSE_MS
      if (key === 'Shift' || key === 'CapsLock') return NOTHING
      if (key === 'Enter') {
        const text = typed
        typed = ''
        const quick = at - begun <= MOST_PER_LETTER_MS * text.length
        return inOneGo && quick && isCode(text) ? { kind: 'scan', text } : NOTHING
      }
      if (key.length !== 1) {
        typed = ''
        return NOTHING
      }
      const first = typed === '' || !inOneGo
      typed = first ? key : typed + key
      if (first) begun = at
      last = at
      return first ? { kind: 'first' } : NOTHING
    },
  }
}

function isCode(text: string): boolean {
  return text.length >= LEAST_LETTERS && /\d/.test(text) && !/\s/.test(text)
}
