/** What Safari gives as the key code of a key that an input method took, when it no longer says that one composes. */
const TAKEN_BY_INPUT_METHOD = 229

/**
 * Keeps the keys of an input method to itself: Enter and Escape in the middle of a word choose or drop a character, and
 * nothing that listens for keys on the page may hear them. Must be called before anything listens.
 */
export function keepComposedKeys(page: EventTarget): void {
  const keep = (event: Event) => {
    const { isComposing, keyCode } = event as Event & { isComposing: boolean; keyCode: number }
    if (isComposing || keyCode === TAKEN_BY_INPUT_METHOD) event.stopImmediatePropagation()
  }
  page.addEventListener('keydown', keep, true)
}
