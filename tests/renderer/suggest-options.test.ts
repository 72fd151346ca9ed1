import { describe, expect, test } from 'vitest'
import { message } from '../../db/messages/message.ts'
import { matchingCrops } from '../../renderer/shared/table-form/crop-letters.ts'
import { keyPressOf, suggestKey, withoutScanned } from '../../renderer/shared/table-form/suggest-key.ts'
import {
  firstActive,
  movedActive,
  spokenOptions,
  suggestOptions,
} from '../../renderer/shared/table-form/suggest-options.ts'

const found = [{ key: '1', name: 'Odile Marsh', detail: 'Quillhaven', item: 1 }]
const nobody = [{ key: 'nobody', label: 'Nobody knows', onPick: () => undefined }]
const addNew = { label: (text: string) => `${text} is new here` }

describe('what a field that finds offers', () => {
  test('adding as new comes after what was found, the standing choice last', () => {
    const options = suggestOptions(found, ' Odile ', addNew, nobody)
    expect(options.map(({ kind }) => kind)).toEqual(['found', 'add', 'standing'])
    expect(firstActive(options, 'Odile')).toBe(0)
    expect(spokenOptions(options)).toEqual([
      message('table.found', { count: 1 }),
      'Odile is new here',
      'Nobody knows',
    ])
  })

  test('a name that nobody bears is never taken for nobody', () => {
    expect(firstActive(suggestOptions([], 'Xyz', undefined, nobody), 'Xyz')).toBe(-1)
    expect(firstActive(suggestOptions([], '', undefined, nobody), '')).toBe(0)
  })

  test('without letters there is nothing to add', () => {
    expect(suggestOptions([], '  ', addNew, [])).toEqual([])
  })

  test('what is seldom meant is offered last, never taken unasked, and not beside its very name', () => {
    const seldom = { ...addNew, seldom: true }
    expect(firstActive(suggestOptions([], 'Xyz', seldom, []), 'Xyz')).toBe(-1)
    expect(firstActive(suggestOptions(found, 'Odi', seldom, []), 'Odi')).toBe(0)
    expect(suggestOptions(found, 'odile marsh', seldom, []).map(({ kind }) => kind)).toEqual(['found'])
  })

  test('arrows go round at both ends', () => {
    expect(movedActive(2, 1, 3)).toBe(0)
    expect(movedActive(0, -1, 3)).toBe(2)
    expect(movedActive(-1, 1, 3)).toBe(0)
    expect(movedActive(-1, -1, 3)).toBe(2)
    expect(movedActive(0, 1, 0)).toBe(-1)
  })

  test('Enter with Ctrl or Shift belongs to the table, not to the field', () => {
    const press = { ctrlKey: false, metaKey: false, shiftKey: false, altKey: false }
    expect(suggestKey({ ...press, key: 'Enter' })).toBe('take-and-go-on')
    expect(suggestKey({ ...press, key: 'Enter', ctrlKey: true })).toBeNull()
    expect(suggestKey({ ...press, key: 'Enter', shiftKey: true })).toBeNull()
    expect(suggestKey({ ...press, key: 'Tab' })).toBe('take')
    expect(suggestKey({ ...press, key: 'Tab', shiftKey: true })).toBeNull()
    expect(suggestKey({ ...press, key: 'b' })).toBeNull()
  })
})

describe('crops by a few letters', () => {
  const crops = ['Runner bean', 'Bean, broad', 'Beet', 'Tomato', 'Peanut', 'Garden pea'].map(
    (commonName, at) => ({
      cropId: String(at),
      commonName,
      own: false,
      species: commonName === 'Tomato' ? 'Solanum lycopersicum' : 'Species',
      packetSeeds: null,
      names: [],
      place: at,
    }),
  )

  test('names that begin with them come first, then names with a word that does', () => {
    expect(matchingCrops(crops, 'bea').map(({ crop }) => crop.commonName)).toEqual([
      'Bean, broad',
      'Runner bean',
    ])
  })

  test('a whole word of the name comes before a longer word that begins with it', () => {
    expect(matchingCrops(crops, 'pea').map(({ crop }) => crop.commonName)).toEqual(['Garden pea', 'Peanut'])
  })

  test('a botanical name finds too', () => {
    expect(matchingCrops(crops, 'lycop').map(({ crop }) => crop.commonName)).toEqual(['Tomato'])
  })
})

describe('the keys pressed while an answer is on its way', () => {
  const press = (key: string) => ({ key, ctrlKey: false, metaKey: false, shiftKey: false, altKey: false })
  const presses = (text: string) => [...text].map(press)

  test('a key that only changes others is not kept', () => {
    expect(keyPressOf({ ...press('Shift'), shiftKey: true })).toBeNull()
    expect(keyPressOf({ ...press('A'), shiftKey: true })).toEqual({ ...press('A'), shiftKey: true })
  })

  test('the letters of a label reader are left out, where they were the last', () => {
    expect(withoutScanned(presses('peaHL123'), 'HL123')).toEqual(presses('pea'))
    expect(withoutScanned([press('Enter'), ...presses('HL123')], 'HL123')).toEqual([press('Enter')])
    expect(withoutScanned(presses('HL12'), 'HL123')).toEqual(presses('HL12'))
  })
})
