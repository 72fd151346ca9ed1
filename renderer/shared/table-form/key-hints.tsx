import { ORDER_KEY } from '../format/keys.ts'

interface KeyHintsProps {
  /** What Shift with Enter leads to. */
  readonly more: string
  readonly saves?: string
}

/** The keys of a table form, beneath it. */
export function KeyHints({ more, saves = 'saves the visit' }: KeyHintsProps) {
  return (
    <p className="key-hints soft">
      <kbd>Enter</kbd> goes on · <kbd>Esc</kbd> steps back · <kbd>Shift</kbd>+<kbd>Enter</kbd> {more} ·{' '}
      <kbd>{ORDER_KEY}</kbd>+<kbd>Enter</kbd> {saves} · <kbd>F6</kbd> to the other screens
    </p>
  )
}
