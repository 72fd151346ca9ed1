import { counted } from '../support/counted.ts'
import { ButtonWalk } from './support/button-walk.ts'
import type { RunningApp } from './support/running-app.ts'
import { expect, test } from './support/test.ts'

/** A screen, or a card of one, and a few buttons that take themselves away, give way to a form, or wait while they work. */
const FEW: readonly (readonly [path: string, ...buttons: readonly string[]])[] = [
  ['/settings', 'Add a label sheet', 'Check the book'],
  ['/written', 'Show earlier entries'],
  ['/take-back', 'stop waiting'],
]
const FEW_OF_CARDS: readonly (readonly [card: keyof typeof CARDS, ...buttons: readonly string[]])[] = [
  ['gift', 'done, and more to say'],
  ['lot kept back', 'Release'],
]

const SCREENS = [
  ...['/take-in', '/take-in/list', '/hand-out', '/hand-out/paper', '/take-back', '/stocktake', '/shelf'],
  ...['/germination', '/storage', '/storage/new', '/storage/compare', '/storage/round'],
  ...['/regrow', '/regrow/plan', '/regrow/season', '/regrow/lists', '/print', '/people'],
  ...['/in-and-out', '/settings', '/written'],
]

/** Cards that have buttons of their own, by what they are of. */
const CARDS = {
  lot: async (app: RunningApp) => {
    const { rows } = await app.call('lot.list', { sort: 'count', descending: true })
    return `/shelf/lot/${rows[0]?.lotId}`
  },
  'lot kept back': async (app: RunningApp) => {
    const { rows } = await app.call('lot.list', { quarantined: true })
    return `/shelf/lot/${rows[0]?.lotId}`
  },
  gift: async (app: RunningApp) => {
    const { gifts } = await app.call('gift.list', {})
    return `/take-in/waiting/${gifts[0]?.giftId}`
  },
  test: async (app: RunningApp) => {
    const { tests } = await app.call('germination.list', {})
    return `/germination/test/${tests[0]?.testId}`
  },
  'lot to be tested': async (app: RunningApp) => {
    const { rows } = await app.call('lot.list', { sort: 'count', descending: true })
    return `/germination/lot/${rows[0]?.lotId}`
  },
  'measured place': async (app: RunningApp) => {
    const { places } = await app.call('storage.list', {})
    return `/storage/place/${places.find(({ latest }) => latest !== null)?.placeId}`
  },
} as const

test('after an act the focus stays where work goes on', { tag: '@long' }, async ({ app, page }) => {
  const walk = new ButtonWalk(page)
  for (const [path, ...buttons] of FEW) await walk.only(path, buttons)
  for (const [card, ...buttons] of FEW_OF_CARDS) await walk.only(await CARDS[card](app), buttons)
  counted('buttons pressed, the focus somewhere sensible after each', walk.pressed)
  expect(walk.wrong).toEqual([])
})

const all = [
  ...SCREENS.map((path) => [path, async () => path] as const),
  ...Object.entries(CARDS).map(([card, path]) => [`a ${card}`, path] as const),
]
for (const [what, path] of all) {
  const title = `after every button of ${what} the focus stays where work goes on`
  test(title, { tag: '@every-button' }, async ({ app, page }) => {
    test.setTimeout(1_200_000)
    const walk = new ButtonWalk(page)
    await walk.walk(await path(app))
    counted('buttons pressed, the focus somewhere sensible after each', walk.pressed)
    expect(walk.wrong).toEqual([])
  })
}
