import { afterEach, beforeEach, expect, it, vi } from 'vitest'
import { lettersEnd, tellLetter, whenLettersRest } from '../../renderer/shared/scans/letters.ts'

beforeEach(() => {
  vi.useFakeTimers()
})

afterEach(() => {
  vi.useRealTimers()
})

/** Whether what was begun has ended by now. */
async function ended(work: Promise<void>): Promise<boolean> {
  const still = Symbol('still')
  return (await Promise.race([work, Promise.resolve(still)])) !== still
}

it('what a label led to waits while the letters of the next one fall', async () => {
  tellLetter()
  const rest = whenLettersRest()
  await vi.advanceTimersByTimeAsync(100)
  tellLetter()
  await vi.advanceTimersByTimeAsync(100)
  expect(await ended(rest)).toBe(false)
  await vi.advanceTimersByTimeAsync(100)
  expect(await ended(rest)).toBe(true)
})

it('nothing waits once a label is read to its end', async () => {
  tellLetter()
  lettersEnd()
  await whenLettersRest()
})
