import { expect, test } from 'vitest'
import { plantCaution } from '../../../db/domain/cautions/plant-caution.ts'

test.each([
  ['Poppy', '', /opium poppy/i],
  ['Lettuce-leaf', 'Papaver somniferum', /opium poppy/i],
  ['Foxgloves', '', /poisonous/],
  ['Garden flower', 'Ricinus communis', /poisonous/],
  ['Tobacco', '', /restricted/],
  ['Himalayan balsam', '', /invasive or noxious/],
])('%s, %s: local rules decide', (name, species, words) => {
  expect(plantCaution(name, species)).toMatch(words)
  expect(plantCaution(name, species)).toMatch(/Local rules decide/)
})

test.each([
  ['Chickpea', 'Cicer arietinum'],
  ['Common bean', 'Phaseolus vulgaris'],
  ['Pea', 'Pisum sativum'],
  ['California poppies', 'Eschscholzia californica'],
  ['Field poppy', 'Papaver rhoeas'],
])('%s is not taken for another plant', (name, species) => {
  expect(plantCaution(name, species)).toBe('')
})
