import { describe, expect, it } from 'vitest'
import { settingsOf, typedFrom } from '../../renderer/screens/settings/typed-settings.ts'

const SETTINGS = {
  libraryName: 'Quillhaven Seed Library',
  accessionPattern: 'QH{yy}-{####}',
  regrowingsKept: 3,
  emergence: 0.8,
  assurance: 0.9,
  viabilityThreshold: 0.855,
  viabilityThresholdOf: 'the-start',
  grade: 'maintenance',
  sowingDay: '04-15',
  language: 'en',
  locale: 'en-GB',
  massUnits: 'metric',
  paper: 'a4',
  appearance: 'system',
  visitLimit: null,
  checkReturns: 'by-risk',
  dueDates: false,
  maskedNames: [] as string[],
  whomToCall: '',
} as const

describe('settings as they are typed', () => {
  it('come back as they were, but for those chosen elsewhere', () => {
    const { appearance, grade, sowingDay, maskedNames, whomToCall, ...typed } = SETTINGS
    expect(settingsOf(typedFrom(SETTINGS))).toEqual({ settings: typed, problems: {} })
  })

  it('take a comma and a percent sign', () => {
    const typed = { ...typedFrom(SETTINGS), emergence: '72,5 %' }
    expect(settingsOf(typed).settings?.emergence).toBeCloseTo(0.725, 12)
  })

  it.each([
    ['regrowingsKept', '0'],
    ['regrowingsKept', '2.5'],
    ['emergence', 'most'],
    ['assurance', '100'],
    ['assurance', '49'],
    ['viabilityThreshold', '101'],
    ['visitLimit', '0'],
    ['visitLimit', '2.5'],
    ['libraryName', ' '],
  ] as const)('say what is wrong with %s as ‘%s’', (field, text) => {
    const read = settingsOf({ ...typedFrom(SETTINGS), [field]: text })
    expect(read.settings).toBeNull()
    expect(Object.keys(read.problems)).toEqual([field])
  })

  it('take an empty limit for none', () => {
    expect(settingsOf({ ...typedFrom(SETTINGS), visitLimit: ' ' }).settings?.visitLimit).toBeNull()
    expect(settingsOf({ ...typedFrom(SETTINGS), visitLimit: '5' }).settings?.visitLimit).toBe(5)
  })

  it('are not sent with a pattern that would spoil the numbers', () => {
    expect(settingsOf({ ...typedFrom(SETTINGS), accessionPattern: 'MAR-{####}' }).settings).toBeNull()
  })
})
