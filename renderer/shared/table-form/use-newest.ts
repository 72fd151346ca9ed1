import { type RefObject, useLayoutEffect, useRef } from 'react'

/** The newest of a value, for what is done after the drawing in which it was begun. */
export function useNewest<T>(value: T): RefObject<T> {
  const newest = useRef(value)
  useLayoutEffect(() => {
    newest.current = value
  })
  return newest
}
