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
  return {
    /** Whether the key was caught because an answer is still on its way. */
    catches: (event: KeyboardEvent): boolean => {
      if (pressedAhead.current === null) return false
      event.preventDefault()
      const press = keyPressOf(event)
      if (press !== null) pressedAhead.current = [...pressedAhead.current, press]
      return true
    },
    /** Holds the keys until `answered` says whether it went on. Where it did not, only what was typed falls into the field. */
    holdUntil: async (answered: () => Promise<boolean>) => {
      if (pressedAhead.current !== null) return
      pressedAhead.current = []
      let wentOn = false
      try {
        wentOn = await answered()
      } finally {
        const ahead = pressedAhead.current
        pressedAhead.current = null
        await pressAgain(wentOn ? ahead : ahead.filter((press) => typedLetter(press) !== ''))
      }
    },
  }
}
