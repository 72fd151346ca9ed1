const LEAST_LETTERS = 4
const MOST_PER_LETTER_MS = 50
const PAUSE_MS = 250

/** What a label reader typed. */
export interface Scan {
  readonly text: string
  /** The letters that stand in the places of the keys it pressed, however the keyboard is set on this computer. */
  readonly byPlace: string
}

/** What a key means: the first letter after a pause, a letter more, the end of a scan, or nothing of interest. */
export type Heard = { readonly kind: 'nothing' | 'first' | 'letter' } | ({ readonly kind: 'scan' } & Scan)

/** A key as an event of the page tells it: what it gives, its place, and when it was pressed in milliseconds. */
interface PressedKey {
  readonly key: string
  readonly code: string
  readonly timeStamp: number
}

export interface ScanReader {
  hear(pressed: PressedKey): Heard
}

const NOTHING: Heard = { kind: 'nothing' }

/**
 * Tells a label reader, which types as a keyboard does, from a hand: four letters or more without a blank, at least one
 * of them a digit, then Enter, all within 50 ms a letter and without a pause. No hand types like that; a slow machine
 * may still hand over single letters late.
 *
 * A reader presses the keys of a plain Latin keyboard. Where the computer takes it for another one, other letters come
 * (UI Events KeyboardEvent code values, W3C: a code names the place of a key, whatever stands on it).
 */
export function createScanReader(): ScanReader {
  let typed = ''
  let places = ''
  let letters = 0
  let begun = Number.NEGATIVE_INFINITY
  let last = Number.NEGATIVE_INFINITY
  const forget = () => {
    typed = places = ''
    letters = 0
  }
  return {
    hear({ key, code, timeStamp: at }) {
      const inOneGo = at - last <= PAUSE_MS
      if (key === 'Shift' || key === 'CapsLock') return NOTHING
      if (key === 'Enter') {
        const scan = { text: typed, byPlace: places }
        const quick = at - begun <= MOST_PER_LETTER_MS * letters
        forget()
        return inOneGo && quick && (isCode(scan.text) || isCode(scan.byPlace))
          ? { kind: 'scan', ...scan }
          : NOTHING
      }
      const place = letterAt(code) ?? (key.length === 1 ? key : null)
      if (place === null) {
        forget()
        return NOTHING
      }
      const first = letters === 0 || !inOneGo
      if (first) {
        forget()
        begun = at
      }
      last = at
      letters += 1
      typed += key === 'Dead' ? '' : key
      places += place
      return { kind: first ? 'first' : 'letter' }
    },
  }
}

/** The capital or digit in the place of a key on a plain Latin keyboard; null for any other key. */
function letterAt(code: string): string | null {
  return code === 'Minus' ? '-' : (/^(?:Key|Digit)(.)$/.exec(code)?.[1] ?? null)
}

function isCode(text: string): boolean {
  return text.length >= LEAST_LETTERS && /\d/.test(text) && !/\s/.test(text)
}
