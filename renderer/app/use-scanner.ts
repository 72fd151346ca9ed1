import { useEffect, useEffectEvent } from 'react'
import { tellLetter } from '../shared/scans/letters.ts'
import { tellScanRead } from '../shared/scans/scans.ts'
import { createScanReader, type Scan } from './scan-reader.ts'

interface Before {
  readonly field: TypedInto
  readonly value: string
}

/**
 * Listens for a label reader wherever the focus is. Its letters are taken out of the field they fell into and its Enter
 * is kept from the focused button and the half-filled form.
 */
export function useScanner(onScan: (scan: Scan) => void): void {
  const scanned = useEffectEvent(onScan)
  useEffect(() => {
    const reader = createScanReader()
    let before: Before | null = null
    let swallowEnterUp = false
    const down = (event: KeyboardEvent) => {
      // A key that the page presses again was heard when it was pressed.
      if (!event.isTrusted || event.ctrlKey || event.metaKey || event.altKey) return
      const heard = reader.hear(event)
      if (heard.kind === 'first') before = fieldAsItIs(event.target)
      if (heard.kind !== 'nothing') tellLetter()
      if (heard.kind !== 'scan') return
      event.preventDefault()
      event.stopImmediatePropagation()
      swallowEnterUp = true
      if (before !== null && before.field.value !== before.value) typeInto(before.field, before.value)
      tellScanRead(heard.text)
      scanned(heard)
    }
    const up = (event: KeyboardEvent) => {
      if (event.key !== 'Enter' || !swallowEnterUp) return
      swallowEnterUp = false
      event.preventDefault()
      event.stopImmediatePropagation()
    }
    window.addEventListener('keydown', down, true)
    window.addEventListener('keyup', up, true)
    return () => {
      window.removeEventListener('keydown', down, true)
      window.removeEventListener('keyup', up, true)
    }
  }, [])
}

function fieldAsItIs(target: EventTarget | null): Before | null {
  const typedInto =
    target instanceof HTMLInputElement ||
    target instanceof HTMLTextAreaElement ||
    target instanceof HTMLSelectElement
  return typedInto ? { field: target, value: target.value } : null
}

type TypedInto = HTMLInputElement | HTMLTextAreaElement | HTMLSelectElement

/** Sets a field through its own setter, so that React hears of it as of something typed. */
export function typeInto(field: TypedInto, value: string): void {
  const setter = Object.getOwnPropertyDescriptor(Object.getPrototypeOf(field), 'value')?.set
  setter?.call(field, value)
  field.dispatchEvent(new Event(field instanceof HTMLSelectElement ? 'change' : 'input', { bubbles: true }))
}
