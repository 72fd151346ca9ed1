import { expect, it } from 'vitest'
import { clashingGardens } from '../../renderer/screens/season-plan/clashing-gardens.ts'

const lines = [
  { accessionId: 1, siteId: 10 },
  { accessionId: 2, siteId: 9 },
  { accessionId: 3, siteId: 9 },
]
const clash = (...accessionIds: number[]) => ({ accessionIds })

it('marks two gardens whose plants cross once, however many cross', () => {
  expect(clashingGardens([clash(1, 2), clash(3, 1)], lines)).toEqual([[9, 10]])
})

it('marks one garden where everything that clashes lies within it', () => {
  expect(clashingGardens([clash(2), clash(2, 3), clash(1)], lines)).toEqual([[9], [10]])
})
