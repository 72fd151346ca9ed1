import { type KeyboardEvent, useRef } from 'react'
import { useScanRead } from '../scans/scans.ts'
import { pressAgain } from './press-again.ts'
import { type KeyPress, keyPressOf, typedLetter, withoutScanned } from './suggest-key.ts'

/**
 * Holds the keys pressed while an answer is on its way, and lets them do their work once it is there.
 *
 * What a key does must not depend on how quickly the app answered the one before it.
 */
export function useHeldKeys() {
  const pressedAhead = useRef<readonly KeyPress[] | null>(null)
  useScanRead((text) => {
    if (pressedAhead.current !== null) pressedAhead.current = withoutScanned(pressedAhead.current, text)
  })
  const holding = useRef<Promise<void>>(Promise.resolve())
  const hold = async (presses: readonly KeyPress[], answered: () => Promise<Let>) => {
    while (pressedAhead.current !== null) await holding.current
    pressedAhead.current = presses
    holding.current = discard(answered)
    await holding.current
  }
  const discard = async (answered: () => Promise<Let>) => {
    let go: Let = 'typed'
    try {
      go = await answered()
    } finally {
      const ahead = pressedAhead.current ?? []
      pressedAhead.current = null
      const typed = ahead.filter((press) => typedLetter(press) !== '')
      await pressAgain(go === 'all' ? ahead : go === 'typed' ? typed : [])
    }
  }
  return {
    /** Whether the key was caught because an answer is still on its way. */
    catches: (event: KeyboardEvent): boolean => {
      if (pressedAhead.current === null) return false
      event.preventDefault()
      const press = keyPressOf(event)
      // A key that is held down does its work once.
      if (press !== null && (!event.repeat || typedLetter(press) !== ''))
        pressedAhead.current = [...pressedAhead.current, press]
      return true
    },
    /** Holds the keys until `answered` says whether it went on. Where it did not, only what was typed falls into the field. */
    holdUntil: (answered: () => Promise<boolean>) =>
      hold([], async () => ((await answered()) ? 'all' : 'typed')),
    /** Holds a key of which it is not known yet what it does, and presses it once it is, unless the focus has left. */
    holdKey: (event: KeyboardEvent, known: () => Promise<unknown>) => {
      event.preventDefault()
      const press = keyPressOf(event)
      const at = document.activeElement
      return hold(press === null ? [] : [press], async () => {
        await known()
        return document.activeElement === at ? 'all' : 'none'
      })
    },
  }
}

/** Which of the held keys do their work. */
type Let = 'all' | 'typed' | 'none'
