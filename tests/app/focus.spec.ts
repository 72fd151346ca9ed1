import { counted } from '../support/counted.ts'
import { ButtonWalk } from './support/button-walk.ts'
import { CARDS } from './support/cards.ts'
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
