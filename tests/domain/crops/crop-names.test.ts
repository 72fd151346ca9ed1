import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { CropNames } from '../../../db/domain/crops/crop-names.ts'
import names from '../../../db/reference/crop-names.json' with { type: 'json' }
import crops from '../../../db/reference/crops.json' with { type: 'json' }
import { sized } from '../../support/sized.ts'

const byId: Readonly<Record<string, Readonly<Record<string, readonly string[]>>>> = names.crops
const order = Object.keys(names.crops)
const known = crops.map(({ id, common_name, species }) => ({
  id,
  commonName: common_name,
  species,
  names: Object.values(byId[id] ?? {}).flat(),
  place: order.indexOf(id),
}))
const finder = new CropNames(known)
const firstFound = (text: string) => finder.find(text)[0]?.crop.id
const everyName = known.flatMap((crop) => crop.names.map((name) => ({ crop, name })))

/** What people call them, and the crop that they mostly mean. Common practice, from memory. */
const MEANT: readonly (readonly [string, string])[] = [
  ...([
    ['corn', 'maize'],
    ['popcorn', 'maize'],
    ['sweetcorn', 'sweet-corn'],
    ['courgette', 'squash-pepo'],
    ['zucchini', 'squash-pepo'],
    ['marrow', 'squash-pepo'],
    ['pumpkin', 'squash-pepo'],
    ['aubergine', 'eggplant'],
    ['swede', 'swede'],
    ['rutabaga', 'swede'],
    ['rocket', 'rocket'],
    ['arugula', 'rocket'],
    ['spring onion', 'onion'],
    ['scallions', 'onion'],
    ['green bean', 'bean'],
    ['French beans', 'bean'],
    ['pole beans', 'bean'],
    ['runner beans', 'runner-bean'],
    ['beans', 'bean'],
    ['bell pepper', 'pepper'],
    ['chilli', 'pepper'],
    ['beetroot', 'beet'],
    ['garlic', 'garlic'],
    ['poppy', 'field-poppy'],
    ['marigold', 'marigold'],
    ['endive', 'endive'],
  ] as const),
  ...([
    ['tomatos', 'tomato'],
    ['tomatoe', 'tomato'],
    ['raddish', 'radish'],
    ['brocoli', 'broccoli'],
    ['lettice', 'lettuce'],
    ['cherry tomatoes', 'tomato'],
    ['old dwarf French bean', 'bean'],
  ] as const),
  ...([
    ['Bohnen', 'bean'],
    ['Möhren', 'carrot'],
    ['Moehre', 'carrot'],
    ['Kürbis', 'squash-pepo'],
    ['Rote Bete', 'beet'],
    ['Knoblauch', 'garlic'],
    ['pois', 'pea'],
    ['petits pois', 'pea'],
    ['choux', 'cabbage'],
    ['Haricots verts', 'bean'],
    ['betterave', 'beet'],
    ['judías', 'bean'],
    ['calabacín', 'squash-pepo'],
    ['maíz', 'maize'],
    ['ajo', 'garlic'],
  ] as const),
]

describe('crops as people call them', () => {
  test.each(MEANT)('‘%s’ means %s first', (typed, meant) => {
    expect(firstFound(typed)).toBe(meant)
  })

  test('every name of the data finds its crop, in capitals, without accents, one or many', () => {
    for (const { crop, name } of everyName) {
      for (const typed of [name, name.toUpperCase(), name.normalize('NFD').replace(/\p{M}/gu, '')])
        expect(finder.called(typed)).toContain(crop)
      expect(finder.called(`${name}s`).length).toBeGreaterThan(0)
    }
  })

  test('every crop of the table has its everyday names in four languages', () => {
    expect(Object.keys(byId).toSorted()).toEqual(known.map(({ id }) => id).toSorted())
    for (const [id, languages] of Object.entries(byId)) {
      expect(Object.keys(languages), id).toEqual(['en', 'de', 'fr', 'es'])
      expect(
        Object.values(languages).every((called) => called.length > 0),
        id,
      ).toBe(true)
    }
  })

  test('a letter left out, doubled, or two swapped still finds the crop', () => {
    const long = everyName.filter(({ name }) => /^\p{L}{6,}$/u.test(name) && !/[ßœ]/.test(name))
    fc.assert(
      fc.property(
        fc.constantFrom(...long),
        fc.constantFrom('left out', 'doubled', 'swapped'),
        fc.nat({ max: 30 }),
        ({ crop, name }, slip, where) => {
          const letters = [...name]
          const at = where % (letters.length - 1)
          const [one = '', next = ''] = letters.slice(at, at + 2)
          const put = { 'left out': [next], doubled: [one, one, next], swapped: [next, one] }[slip] ?? []
          const typed = letters.toSpliced(at, 2, ...put).join('')
          expect(finder.find(typed).map(({ crop: { id } }) => id)).toContain(crop.id)
        },
      ),
      { numRuns: sized(300, 20_000) },
    )
  })

  test('an own crop without a botanical name is found by its name; nonsense finds nothing', () => {
    const own = { id: 'own-1-1', commonName: 'Lantern vine', species: '', names: [], place: 0 }
    const withOwn = new CropNames([...known, own])
    expect(withOwn.find('lantern')[0]?.crop).toBe(own)
    expect(finder.find('xqzvw')).toEqual([])
    expect(finder.find(' ')).toEqual([])
  })
})
