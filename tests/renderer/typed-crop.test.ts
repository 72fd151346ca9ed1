import { describe, expect, test } from 'vitest'
import { correctionOf, keepingOf, type TypedCrop } from '../../renderer/screens/settings/typed-crop.ts'
import { inEnglish } from '../builders/in-english.ts'

const CROP: TypedCrop = {
  name: 'Lantern vine',
  species: '',
  family: '',
  packetSeeds: '',
  hundredSeedWeightG: '',
  countedUnit: 'seed',
  keepsMonths: '',
  matingSystem: '',
  pollination: '',
  lifeCycle: '',
  isolationHomeM: '',
  isolationStrictM: '',
  laterSowingDays: '',
  bedArea: '',
  seedExtraction: '',
  ke: '',
  cw: '',
  ch: '',
  cq: '',
}
const CONSTANTS = { ke: '9.993', cw: '5,993', ch: '0.0322', cq: '0.000454' }
const KEEPING = { plantsToKeep: '', viabilityThreshold: '', daysToSeed: '', reason: 'sets little seed' }

describe('a crop of the keeper’s own, as typed', () => {
  test('what is empty is not known, and a comma is read', () => {
    expect(correctionOf(CROP).read).toMatchObject({ packetSeeds: null, hundredSeedWeightG: null })
    expect(correctionOf({ ...CROP, packetSeeds: '25', hundredSeedWeightG: '0,04' }).read).toMatchObject({
      packetSeeds: 25,
      hundredSeedWeightG: 0.04,
    })
  })

  test('how it is grown is read with it: what is chosen, metres, days, bed, and constants that may have three decimals', () => {
    const { read } = correctionOf({
      ...CROP,
      ...CONSTANTS,
      countedUnit: 'fruit',
      keepsMonths: '9',
      matingSystem: 'outcrosser',
      isolationHomeM: '250',
      laterSowingDays: '21',
      bedArea: '0,25',
    })
    expect(read).toMatchObject({
      countedUnit: 'fruit',
      keepsMonths: 9,
      matingSystem: 'outcrosser',
      pollination: null,
      lifeCycle: null,
      seedExtraction: null,
      isolationHomeM: 250,
      isolationStrictM: null,
      laterSowingDays: 21,
      bedArea: 0.25,
      viabilityConstants: { ke: 9.993, cw: 5.993, ch: 0.0322, cq: 0.000454 },
    })
    expect(correctionOf(CROP).read?.viabilityConstants).toBeNull()
  })

  test('constants are known together or not at all: each that is missing is asked for', () => {
    const { read, problems } = correctionOf({ ...CROP, ...CONSTANTS, cw: '', cq: ' ' })
    expect(read).toBeNull()
    expect(inEnglish(problems)).toEqual({
      cw: 'The four belong together: type this one too, or none of them.',
      cq: 'The four belong together: type this one too, or none of them.',
    })
  })

  test('a weight that may be grams or kilograms is asked about, as no other mark tells', () => {
    expect(correctionOf({ ...CROP, hundredSeedWeightG: '1.234' }).read).toBeNull()
    expect(correctionOf({ ...CROP, hundredSeedWeightG: '1.2340' }).read?.hundredSeedWeightG).toBe(1.234)
  })

  test.each([
    [{ isolationHomeM: '0' }, 'isolationHomeM'],
    [{ isolationStrictM: 'far' }, 'isolationStrictM'],
    [{ laterSowingDays: '3' }, 'laterSowingDays'],
    [{ bedArea: '-1' }, 'bedArea'],
    [{ ...CONSTANTS, ke: '40' }, 'ke'],
    [{ ...CONSTANTS, cq: '0' }, 'cq'],
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
