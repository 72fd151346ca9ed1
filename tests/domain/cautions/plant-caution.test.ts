import { expect, test } from 'vitest'
import { plantCaution } from '../../../db/domain/cautions/plant-caution.ts'
import { saidInEnglish } from '../../builders/in-english.ts'

test.each([
  ['Poppy', '', /opium poppy/i],
  ['Lettuce-leaf', 'Papaver somniferum', /opium poppy/i],
  ['Foxgloves', '', /poisonous/],
  ['Garden flower', 'Ricinus communis', /poisonous/],
  ['Tobacco', '', /restricted/],
  ['Himalayan balsam', '', /invasive or noxious/],
  ['Amapola', '', /opium poppy/i],
  ['Estramonio', '', /poisonous/],
  ['Cáñamo', '', /restricted/],
])('%s, %s: local rules decide', (name, species, words) => {
  const told = saidInEnglish(plantCaution(name, species) ?? '')
  expect(told).toMatch(words)
  expect(told).toMatch(/Local rules decide/)
})

test.each([
  ['Chickpea', 'Cicer arietinum'],
  ['Common bean', 'Phaseolus vulgaris'],
  ['Pea', 'Pisum sativum'],
  ['California poppies', 'Eschscholzia californica'],
  ['Field poppy', 'Papaver rhoeas'],
])('%s is not taken for another plant', (name, species) => {
  expect(plantCaution(name, species)).toBeNull()
})
