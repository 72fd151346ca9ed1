import fc from 'fast-check'
import { expect, test } from 'vitest'
import { keepComposedKeys } from '../../renderer/shared/composed-keys.ts'

/** A page on which something listens for keys, with what it heard. */
function aPage() {
  const page = new EventTarget()
  const heard: string[] = []
  keepComposedKeys(page)
  const hear = (event: Event) => heard.push((event as Event & { key: string }).key)
  page.addEventListener('keydown', hear, true)
  page.addEventListener('keydown', (event) => hear(event))
  return { page, heard }
}

const KEY = fc.record({
  key: fc.constantFrom('Enter', 'Escape', 'ArrowDown', 'Tab', ' ', 'a', 'Process'),
  isComposing: fc.boolean(),
  keyCode: fc.constantFrom(13, 27, 65, 229),
})

test('no listener hears a key of an input method, and every other key is heard by all', () => {
  fc.assert(
    fc.property(KEY, (pressed) => {
      const { page, heard } = aPage()
      const event = Object.assign(new Event('keydown', { cancelable: true }), pressed)
      page.dispatchEvent(event)
      const composed = pressed.isComposing || pressed.keyCode === 229
      expect(heard).toEqual(composed ? [] : [pressed.key, pressed.key])
      expect(event.defaultPrevented).toBe(false)
    }),
  )
})
