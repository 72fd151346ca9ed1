/** The keys of a table form, beneath it. `more` is what Shift with Enter leads to. */
export function KeyHints({ more }: { readonly more: string }) {
  return (
    <p className="key-hints soft">
      <kbd>Enter</kbd> goes on · <kbd>Esc</kbd> steps back · <kbd>Shift</kbd>+<kbd>Enter</kbd> {more} ·{' '}
      <kbd>Ctrl</kbd>+<kbd>Enter</kbd> saves the visit
    </p>
  )
}
