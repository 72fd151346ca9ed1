import { describe, expect, it } from 'vitest'
import { createFormat } from '../../renderer/shared/format/format.ts'

const british = createFormat({ locale: 'en-GB', massUnits: 'metric' })
const german = createFormat({ locale: 'de-DE', massUnits: 'metric' })

describe('numbers, masses and dates as the library writes them', () => {
  it('groups and points as the locale does', () => {
    expect(british.number(1_240)).toBe('1,240')
    expect(german.number(1_240)).toBe('1.240')
    expect(german.mass(12_500)).toBe('12,5 g')
  })

  it('writes a mass in the unit that a small scale shows', () => {
    expect([340, 12_451, 1_200_000, -340].map(british.mass)).toEqual([
      '340 mg',
      '12.451 g',
      '1.2 kg',
      '−340 mg',
    ])
  })

  it('writes a date as the locale does, and leaves what is no date alone', () => {
    expect(british.day('2026-03-04')).toBe('4 Mar 2026')
    expect(german.day('2026-03-04')).toBe('04.03.2026')
    expect(british.day('')).toBe('')
  })

  it('writes each date of a sentence so', () => {
    expect(british.sentence('QH25-0001-A: 20 sprouted on 2026-03-04')).toBe(
      'QH25-0001-A: 20 sprouted on 4 Mar 2026',
    )
  })

  it('writes a percentage as its sentences do, and keeps it on one line', () => {
    expect(british.percent(0.854)).toBe('85\u00a0%')
  })

  it('signs a change with a true minus', () => {
    expect([50, -3, 0].map(british.change)).toEqual(['+50', '−3', '0'])
  })
})
