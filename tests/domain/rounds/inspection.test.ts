import { describe, expect, test } from 'vitest'
import type { Told } from '../../../db/contract/told.ts'
import {
  INSPECTIONS,
  type Inspection,
  looksFor,
  roundCautions,
} from '../../../db/domain/rounds/inspection.ts'
import { message } from '../../../db/messages/message.ts'
import { inEnglish } from '../../builders/in-english.ts'

describe('what there is to look at', () => {
  test.each([
    [{ freezes: false, chills: false, closedIn: false }, ['pests', 'dampness', 'reading']],
    [{ freezes: false, chills: false, closedIn: true }, ['pests', 'seals', 'gel', 'dampness', 'reading']],
    [{ freezes: false, chills: true, closedIn: false }, ['pests', 'seals', 'dampness', 'reading']],
    [{ freezes: true, chills: false, closedIn: false }, ['seals', 'dampness', 'reading']],
    [{ freezes: true, chills: false, closedIn: true }, ['seals', 'gel', 'dampness', 'reading']],
  ] as const)('%j', (stop, looks) => {
    expect(looksFor(stop)).toEqual(looks)
  })
})

test('each look has a name and words of its own', () => {
  const name = (look: Inspection) => inEnglish<Told>(message(`storage.look-${look}`))
  const words = (look: Inspection) => inEnglish<Told>(message(`storage.look-for-${look}`))
  expect(INSPECTIONS.map(name)).toEqual(['pests', 'seals', 'drying gel', 'dampness', 'reading'])
  expect(INSPECTIONS.map((look) => words(look).split(' ').slice(0, 3).join(' '))).toEqual([
    'Insects, holes or',
    'Lids, gaskets and',
    'The drying gel',
    'Mould, a musty',
    'What the thermometer',
  ])
})

test('the usual cautions come with what is looked at, and with nothing else', () => {
  const words = (...looks: Parameters<typeof roundCautions>[0]) =>
    inEnglish<Told[]>(roundCautions(looks)).join(' ')
  expect(words('dampness', 'reading')).toBe('')
  expect(words('gel')).toMatch(/cobalt/)
  expect(words('gel')).not.toMatch(/mice|cold jar/)
  expect(roundCautions(['pests'])).toHaveLength(4)
  expect(words('pests')).toMatch(
    /−18 °C or colder for two weeks.*Only seed dried to.*Do not spray.*wear gloves and a mask/,
  )
  expect(words('seals')).toMatch(/warm up closed/)
})
