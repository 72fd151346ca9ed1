import { expect, it } from 'vitest'
import { RAIL, readCarried, SCREENS, screenOf } from '../../renderer/app/screen-list.ts'

it('an address belongs to the screen with the longest path that it begins with', () => {
  expect(screenOf('/take-in')?.word.id).toBe('screen.take-in')
  expect(screenOf('/take-in/waiting/12')?.word.id).toBe('screen.gifts-waiting')
  expect(screenOf('/take-in/else')?.word.id).toBe('screen.take-in')
  expect(screenOf('/take-income')).toBeUndefined()
  expect(screenOf('/')).toBeUndefined()
})

it('every screen has a path of its own, and stands on the rail or under a screen that does', () => {
  const paths = SCREENS.map(({ path }) => path)
  expect(new Set(paths).size).toBe(paths.length)
  const onRail = SCREENS.filter(({ rail }) => rail !== undefined).map(({ path }) => path)
  for (const { under } of SCREENS) if (under !== undefined) expect(onRail).toContain(under)
  const groups = new Set(SCREENS.flatMap(({ rail }) => rail ?? []))
  expect([...groups]).toEqual([...Object.keys(RAIL), 'end'])
})

it('whatever an address of a screen carries can be read', () => {
  const names = SCREENS.flatMap(({ addresses = [] }) =>
    addresses.flatMap((address) => [...address.matchAll(/:(\w+)/g)].map(([, name]) => name ?? '')),
  )
  expect(names).toContain('lotIds')
  for (const name of names) expect(readCarried({ [name]: '7' })).toHaveProperty(name)
})

it('reads what an address carries, and leaves out what it does not', () => {
  expect(readCarried({ 0: '12', giftId: '12', placeId: undefined })).toEqual({ giftId: 12 })
  expect(readCarried({ lotIds: '3-4' })).toEqual({ lotIds: [3, 4] })
  expect(readCarried({ find: '100%25%20rye', part: 'lot' })).toEqual({ find: '100% rye', part: 'lot' })
})
