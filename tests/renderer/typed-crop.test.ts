import { describe, expect, test } from 'vitest'
import { correctionOf, keepingOf } from '../../renderer/screens/settings/typed-crop.ts'

const CROP = { name: 'Lantern vine', species: '', family: '', packetSeeds: '', hundredSeedWeightG: '' }
const KEEPING = { plantsToKeep: '', viabilityThreshold: '', daysToSeed: '', reason: 'sets little seed' }

describe('a crop of the keeper’s own, as typed', () => {
  test('what is empty is not known, and a comma is read', () => {
    expect(correctionOf(CROP).read).toMatchObject({ packetSeeds: null, hundredSeedWeightG: null })
    expect(correctionOf({ ...CROP, packetSeeds: '25', hundredSeedWeightG: '0,04' }).read).toMatchObject({
      packetSeeds: 25,
      hundredSeedWeightG: 0.04,
    })
  })

  test.each([
    [{ name: ' ' }, 'name'],
    [{ packetSeeds: 'a few' }, 'packetSeeds'],
    [{ packetSeeds: '0' }, 'packetSeeds'],
    [{ hundredSeedWeightG: 'light' }, 'hundredSeedWeightG'],
    [{ hundredSeedWeightG: '0' }, 'hundredSeedWeightG'],
  ])('%j is said at its field, and nothing is sent', (change, field) => {
    const { read, problems } = correctionOf({ ...CROP, ...change })
    expect(read).toBeNull()
    expect(Object.keys(problems)).toEqual([field])
  })
})

describe('what a crop has to keep, as typed', () => {
  test('so many of a hundred are a part of one, and what is empty is the usual figure', () => {
    expect(keepingOf(KEEPING).read).toMatchObject({
      plantsToKeep: null,
      viabilityThreshold: null,
      daysToSeed: null,
    })
    const typed = { ...KEEPING, plantsToKeep: '33', viabilityThreshold: '72,5 %', daysToSeed: '95' }
    expect(keepingOf(typed).read).toMatchObject({
      plantsToKeep: 33,
      viabilityThreshold: 0.725,
      daysToSeed: 95,
    })
  })

  test.each([
    [{ plantsToKeep: '2.5' }, 'plantsToKeep'],
    [{ viabilityThreshold: '140' }, 'viabilityThreshold'],
    [{ daysToSeed: '19' }, 'daysToSeed'],
  ])('%j is said at its field, and nothing is sent', (change, field) => {
    const { read, problems } = keepingOf({ ...KEEPING, ...change })
    expect(read).toBeNull()
    expect(Object.keys(problems)).toEqual([field])
  })
})
