import { describe, expect, test } from 'vitest'
import {
  emptyRound,
  isBlankRound,
  placesOf,
  type RoundStep,
  stepOfField,
  stepRound,
  unreadFigure,
} from '../../renderer/screens/storage/round-draft.ts'

const walked = (...steps: RoundStep[]) => steps.reduce(stepRound, emptyRound('a-key-of-its-own'))
const found: RoundStep = {
  kind: 'look',
  placeId: 3,
  look: 'pests',
  change: { outcome: 'found', note: 'moths', lotIds: [7], quarantine: true },
}

describe('a round while it is walked', () => {
  test('is blank until something is ticked or typed, half a figure too', () => {
    expect(isBlankRound(walked())).toBe(true)
    expect(isBlankRound(walked(found))).toBe(false)
    expect(isBlankRound(walked({ kind: 'reading', placeId: 3, change: { humidity: '4' } }))).toBe(false)
  })

  test('writes down what was looked at, and nothing of what was not', () => {
    const draft = walked(
      found,
      { kind: 'look', placeId: 3, look: 'gel', change: { outcome: '' } },
      { kind: 'reading', placeId: 5, change: { temperature: '-19,5', time: '08:30' } },
      { kind: 'look', placeId: 9, look: 'gel', change: { outcome: '' } },
    )
    expect(placesOf(draft)).toEqual([
      {
        placeId: 3,
        checks: [{ look: 'pests', outcome: 'found', note: 'moths', lotIds: [7], quarantine: true }],
        reading: null,
      },
      {
        placeId: 5,
        checks: [],
        reading: { temperature: -19.5, unit: 'C', humidity: null, time: '08:30' },
      },
    ])
  })

  test('names no lot where all is well after all, and keeps what was typed', () => {
    const fine: RoundStep = { kind: 'look', placeId: 3, look: 'pests', change: { outcome: 'fine' } }
    expect(placesOf(walked(found, fine))[0]?.checks).toEqual([{ look: 'pests', outcome: 'fine' }])
    const again: RoundStep = { kind: 'look', placeId: 3, look: 'pests', change: { outcome: 'found' } }
    expect(placesOf(walked(found, fine, again))[0]?.checks).toMatchObject([{ note: 'moths', lotIds: [7] }])
  })

  test('the rest is fine leaves what was found', () => {
    const rest: RoundStep = { kind: 'rest-is-fine', placeId: 3, looks: ['pests', 'dampness'] }
    expect(placesOf(walked(found, rest))[0]?.checks).toMatchObject([
      { look: 'pests', outcome: 'found' },
      { look: 'dampness', outcome: 'fine' },
    ])
  })

  test.each([
    [{ temperature: '2o' }, '3.temperature'],
    [{ temperature: '20', humidity: 'x' }, '3.humidity'],
    [{ humidity: '40' }, '3.temperature'],
    [{ temperature: '20', humidity: '40' }, null],
  ])('%o: the figure to mend is %s', (change, step) => {
    expect(unreadFigure(walked({ kind: 'reading', placeId: 3, change }))).toBe(step)
  })

  test('a refusal leads to the field it names', () => {
    const places = placesOf(walked(found))
    expect(stepOfField('places.0.checks.0.note', places)).toBe('3.pests.note')
    expect(stepOfField('places.0.checks.0.lotIds.0', places)).toBe('3.pests')
    expect(stepOfField('places.0.reading.time', places)).toBe('3.temperature')
    expect(stepOfField('on', places)).toBeNull()
  })
})
