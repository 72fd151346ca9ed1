const LEAST_LETTERS = 4
const MOST_GAP_MS = 35

/** What a key means: the first letter after a pause, the end of a scan, or nothing of interest. */
export type Heard = { readonly kind: 'nothing' | 'first' } | { readonly kind: 'scan'; readonly text: string }

export interface ScanReader {
  /** Hears one key, with the time it was pressed in milliseconds. */
  hear(key: string, at: number): Heard
}

const NOTHING: Heard = { kind: 'nothing' }

/**
 * Tells a label reader, which types as a keyboard does, from a hand: four letters or more without a blank, at least one
 * of them a digit, each within 35 ms of the last, then Enter. No hand types like that.
 */
export function createScanReader(): ScanReader {
  let typed = ''
  let last = Number.NEGATIVE_INFINITY
  return {
    hear(key, at) {
      const inOneGo = at - last <= MOST_GAP_MS
      if (key === 'Shift' || key === 'CapsLock') return NOTHING
      if (key === 'Enter') {
        const text = typed
        typed = ''
        return inOneGo && isCode(text) ? { kind: 'scan', text } : NOTHING
      }
      if (key.length !== 1) {
        typed = ''
        return NOTHING
      }
      const first = typed === '' || !inOneGo
      typed = first ? key : typed + key
      last = at
      return first ? { kind: 'first' } : NOTHING
    },
  }
}

function isCode(text: string): boolean {
  return text.length >= LEAST_LETTERS && /\d/.test(text) && !/\s/.test(text)
}
