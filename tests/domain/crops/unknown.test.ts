import { expect, test } from 'vitest'
import type { Told } from '../../../db/contract/told.ts'
import { unknownOf, weightUnknown } from '../../../db/domain/crops/unknown.ts'
import { inEnglish } from '../../builders/in-english.ts'

const KNOWN = {
  commonName: 'Lantern vine',
  species: 'Lychnitis errans',
  hundredSeedWeightUg: 40_000,
  packetSeeds: 20,
  countedUnit: 'seed' as const,
  keepsMonths: null,
  matingSystem: 'selfer',
  storageYears: 3,
  viabilityConstants: null,
  federalMinimumPercent: null,
  stateMinimumPercent: 50,
}

test('a crop of which all is known has nothing to say', () => {
  expect(unknownOf(KNOWN)).toEqual([])
})

test.each([
  [{ species: '' }, /botanical name/],
  [{ hundredSeedWeightUg: null }, /Lantern vine seed weighs/],
  [{ packetSeeds: null }, /usual packet/],
  [{ matingSystem: null }, /pollinated/],
  [{ storageYears: null }, /nothing is forecast.*What waiting costs/],
  [{ storageYears: null, viabilityConstants: '{}' }, /^For how many years its seed keeps is not known/],
  [{ stateMinimumPercent: null }, /half alive/],
])('%j is said alone, with what is done without it', (missing, words) => {
  const said = inEnglish<readonly Told[]>(unknownOf({ ...KNOWN, ...missing }))
  expect(said).toHaveLength(1)
  expect(said[0]).toMatch(words)
})

test('a weight that nobody said asks for a counted sample', () => {
  expect(inEnglish<Told>(weightUnknown('Poppy'))).toMatch(/Poppy.*guess.*many times off.*weigh/)
})

test('of what is planted in pieces nothing is said of germination and pollen, only how long it keeps', () => {
  const pieces = { ...KNOWN, countedUnit: 'clove', matingSystem: null, storageYears: null } as const
  const nothingOfSeed = { ...pieces, stateMinimumPercent: null }
  expect(unknownOf({ ...nothingOfSeed, keepsMonths: 6 })).toEqual([])
  expect(inEnglish<readonly Told[]>(unknownOf(nothingOfSeed))).toEqual([
    'How long it keeps is not known: 8 months are taken.',
  ])
})
