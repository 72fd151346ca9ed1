import { expect, test } from 'vitest'
import { storagePestCaution } from '../../../db/domain/cautions/storage-pests.ts'

test('pulses and cereals are eaten in store unless what they are kept in keeps insects out', () => {
  expect(storagePestCaution('Fabaceae', false)).toMatch(/^Weevils and moths/)
  expect(storagePestCaution('Poaceae', false)).toMatch(/^Weevils and moths/)
  expect(storagePestCaution('Fabaceae', true)).toBe('')
  expect(storagePestCaution('Solanaceae', false)).toBe('')
})
