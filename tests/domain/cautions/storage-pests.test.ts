import { expect, test } from 'vitest'
import { storagePestCaution } from '../../../db/domain/cautions/storage-pests.ts'
import { saidInEnglish } from '../../builders/in-english.ts'

test('pulses and cereals are eaten in store unless what they are kept in keeps insects out', () => {
  for (const family of ['Fabaceae', 'Poaceae'])
    expect(saidInEnglish(storagePestCaution(family, false) ?? '')).toMatch(/^Weevils and moths/)
  expect(storagePestCaution('Fabaceae', true)).toBeNull()
  expect(storagePestCaution('Solanaceae', false)).toBeNull()
})
