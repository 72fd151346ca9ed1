import { expect, test } from 'vitest'
import { createDraftSaver } from '../../renderer/shared/table-form/draft-saver.ts'

test('one call is on its way at most, and the newest text is the last to be kept', async () => {
  const kept: string[] = []
  let running = 0
  let most = 0
  const keeper = createDraftSaver(
    async (text) => {
      most = Math.max(most, ++running)
      await new Promise((resolve) => setTimeout(resolve, 2))
      kept.push(text)
      running--
    },
    () => undefined,
  )
  for (const letter of ['m', 'ma', 'mar', 'mart']) keeper.keep(letter)
  await keeper.settled()
  expect(most).toBe(1)
  expect(kept).toEqual(['m', 'mart'])
})

test('a text that could not be kept is said, and the next one is kept all the same', async () => {
  const outcomes: string[] = []
  let full = true
  const keeper = createDraftSaver(
    async () => {
      if (full) throw new Error('disk full')
    },
    (outcome) => outcomes.push(outcome),
  )
  keeper.keep('a')
  await keeper.settled()
  full = false
  keeper.keep('ab')
  await keeper.settled()
  expect(outcomes).toEqual(['not-kept', 'kept'])
})

test('what was typed last counts as not kept until its own call is answered', async () => {
  const answers: (() => void)[] = []
  const keeper = createDraftSaver(
    () => new Promise<void>((resolve) => answers.push(resolve)),
    () => undefined,
  )
  expect(keeper.unkept()).toBeNull()
  keeper.keep('m')
  keeper.keep('ma')
  expect(keeper.unkept()).toBe('ma')
  answers[0]?.()
  await expect.poll(() => answers.length).toBe(2)
  expect(keeper.unkept()).toBe('ma')
  answers[1]?.()
  await keeper.settled()
  expect(keeper.unkept()).toBeNull()
})
