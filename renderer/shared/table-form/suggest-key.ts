/** The parts of a key press that a field which finds looks at. */
export interface KeyPress {
  readonly key: string
  readonly ctrlKey: boolean
  readonly metaKey: boolean
  readonly shiftKey: boolean
  readonly altKey: boolean
}

/** What a key asks of a field that finds; null where the key is only typed. */
export type SuggestKey = 'down' | 'up' | 'close' | 'take' | 'take-and-go-on'

export function suggestKey(press: KeyPress): SuggestKey | null {
  if (press.key === 'ArrowDown') return 'down'
  if (press.key === 'ArrowUp') return 'up'
  if (press.key === 'Escape') return 'close'
  if (press.ctrlKey || press.metaKey || press.shiftKey || press.altKey) return null
  if (press.key === 'Enter') return 'take-and-go-on'
  return press.key === 'Tab' ? 'take' : null
}

/** The letter a key press would type, or ''. */
export function typedLetter(press: KeyPress): string {
  return press.key.length === 1 && !press.ctrlKey && !press.metaKey ? press.key : ''
}

const MODIFIERS: readonly string[] = ['Shift', 'Control', 'Alt', 'AltGraph', 'Meta', 'CapsLock']

/** A key press to be kept; null for a key that only changes what another does. */
export function keyPressOf({ key, ctrlKey, metaKey, shiftKey, altKey }: KeyPress): KeyPress | null {
  return MODIFIERS.includes(key) ? null : { key, ctrlKey, metaKey, shiftKey, altKey }
}

/** Key presses without the last ones, where those were a label reader's. */
export function withoutScanned(presses: readonly KeyPress[], scanned: string): readonly KeyPress[] {
  const last = presses.slice(-scanned.length)
  return last.map(typedLetter).join('') === scanned ? presses.slice(0, -scanned.length) : presses
}
