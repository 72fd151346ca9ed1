import { useEffect, useRef, useState } from 'react'

/** The value at once when it was still before; while it keeps changing, only once it rests for `ms` milliseconds. */
export function useResting<T>(value: T, ms: number): T {
  const [resting, setResting] = useState(value)
  const changedAt = useRef(Number.NEGATIVE_INFINITY)
  useEffect(() => {
    const now = performance.now()
    const wasStill = now - changedAt.current > ms
    changedAt.current = now
    if (wasStill) {
      setResting(value)
      return
    }
    const timer = setTimeout(() => setResting(value), ms)
    return () => clearTimeout(timer)
  }, [value, ms])
  return resting
}
