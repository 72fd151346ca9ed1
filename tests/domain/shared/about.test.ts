import { expect, test } from 'vitest'
import { splitAbout } from '../../../db/domain/shared/about.ts'
import { assertNever } from '../../../db/domain/shared/assert-never.ts'

test.each([
  ['about 200', '200'],
  ['about200', '200'],
  ['approximately 200 seeds', '200 seeds'],
  ['approx. 200', '200'],
  ['approx 200', '200'],
  ['circa 2019', '2019'],
  ['ca. 2019', '2019'],
  ['ca 2019', '2019'],
  ['c. 2019', '2019'],
  ['c2019', '2019'],
  ['roughly 20', '20'],
  ['around 20', '20'],
  ['~20', '20'],
  ['≈ .5', '.5'],
])('%s is a guess at %s', (text, rest) => {
  expect(splitAbout(text)).toEqual({ about: true, rest })
})

test.each(['200', '', 'about', 'about nothing', 'cabbage 20', '20 about', 'c'])(
  '%s is left as it is',
  (text) => {
    expect(splitAbout(text)).toEqual({ about: false, rest: text })
  },
)

test('a member of a closed set that nobody handled stops the program and is named', () => {
  expect(() => assertNever('lost' as never, 'A state has no wording yet')).toThrow(
    'A state has no wording yet: "lost"',
  )
})
