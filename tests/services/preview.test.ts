import { afterEach, beforeEach, expect, it } from 'vitest'
import { aCollection, type TemporaryCollection, TODAY, takeIn } from '../builders/temporary-collection.ts'

let test: TemporaryCollection
beforeEach(async () => {
  test = await aCollection()
})
afterEach(() => test.remove())

it('previews the stock as recording then leaves it, line after line', async () => {
  const { lotId } = await takeIn(test, { amount: '400 seeds' })
  const lines = [
    { lotId, amount: '50 seeds' },
    { lotId, amount: '30 seeds' },
  ]
  const previewed = await test.call('withdrawal.preview', { lines })
  expect(previewed.lines.map(({ left }) => left?.count)).toEqual([350, 320])
  await test.call('withdrawal.record', { person: null, on: TODAY, lines })
  const { stock } = await test.call('lot.get', { lotId })
  expect(previewed.lines[1]?.stock).toEqual(stock)
})

it('offers all of a lot in a text that reads one way only', async () => {
  const { lotId } = await takeIn(test, { amount: '1/2 oz' })
  const { lines } = await test.call('withdrawal.preview', { lines: [{ lotId, amount: '1 kg' }] })
  const all = lines[0]?.problem?.choices[0] ?? ''
  expect(all).toBe('14.1750 g')
  expect((await test.call('amount.preview', { text: all, lotId })).reading).toBe('amount')
})
