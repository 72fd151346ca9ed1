import { expect, test } from 'vitest'
import { packetsIn, packetsInWords } from '../../../db/domain/amounts/packets.ts'

test.each([
  [['3 packets of 25'], 3],
  [['1 packet of 20', '2 packets of 10'], 3],
  [['60 seeds', '12.5 g'], 2],
  [[], 0],
])('%j are %i packets', (amounts, packets) => {
  expect(packetsIn(amounts)).toBe(packets)
})

test('one packet is said in the singular', () => {
  expect([packetsInWords(['5 g']), packetsInWords(['2 packets of 5'])]).toEqual(['1 packet', '2 packets'])
})
