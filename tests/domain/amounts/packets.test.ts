import { expect, test } from 'vitest'
import { packetsIn } from '../../../db/domain/amounts/packets.ts'

test.each([
  [['3 packets of 25'], 3],
  [['1 packet of 20', '2 packets of 10'], 3],
  [['60 seeds', '12.5 g'], 2],
  [[], 0],
])('%j are %i packets', (amounts, packets) => {
  expect(packetsIn(amounts)).toBe(packets)
})
