import type { Page } from '@playwright/test'
import { expectNoBarrier } from './support/axe.ts'
import { press, type } from './support/keys.ts'
import { open } from './support/open.ts'
import type { RunningApp } from './support/running-app.ts'
import { shown } from './support/shown.ts'
import { LONG_NAME, type SmallShelf, smallShelf } from './support/small-shelf.ts'
import { expect, test } from './support/test.ts'

test.use({ drawer: 'shelf' })

let shelf: SmallShelf

test.beforeEach(() => {
  shelf = smallShelf()
})

/** Keeps a gift for later with the steps it waits for. */
async function offer(
  app: RunningApp,
  name: string,
  waitsFor: readonly object[],
  more: object = {},
): Promise<number> {
  const { crops } = await app.call('crop.list', {})
  const { people } = await app.call('person.search', { text: 'zoe' })
  const { giftId } = await app.call('gift.offer', {
    donor: { personId: people[0]?.personId },
    offeredOn: '2026-01-05',
    gift: {
      variety: { newVariety: { cropId: crops[0]?.cropId, name } },
      amount: '40 seeds',
      harvest: '2025',
      ...more,
    },
    decision: { kind: 'later', waitsFor },
  })
  return giftId
}

const rows = (page: Page) => page.getByRole('list', { name: 'Gifts' }).getByRole('link')
const card = (page: Page) => page.getByRole('region', { name: 'Gift' }).getByRole('article')
const stop = (page: Page) => card(page).locator('[aria-current="step"]')

test('is reached from Take in, and says what to do while nothing waits', { tag: '@long' }, async ({
  page,
}) => {
  await open(page, '/take-in')
  await page.getByRole('link', { name: 'Gifts waiting' }).press('Enter')
  await expect(shown(page, 'No gift is waiting.')).toBeVisible()
  await expect(page.getByRole('listitem').filter({ hasText: 'quarantine' })).toContainText(LONG_NAME)
  await expectNoBarrier(page)
})

test('notes each step done with one key, then takes the gift in and shows what became of it', {
  tag: '@long',
}, async ({ app, page }) => {
  await offer(app, 'Not yet due', [{ step: 'test', due: '2999-01-01' }])
  await offer(app, 'Ferry Blue', [
    { step: 'drying', due: '2026-02-01' },
    { step: 'freezing', due: '2026-02-14', note: 'bottom of the freezer' },
  ])
  await open(page, '/take-in/waiting')
  await expect(rows(page).first()).toContainText('Ferry Blue')
  await expect(rows(page).first()).toContainText('late')
  await expect(rows(page).first()).toBeFocused()
  await expect(card(page)).toContainText('Only seed dried to about')
  await expectNoBarrier(page)
  await press(page, 'Enter')
  await expect(page.getByRole('button', { name: 'Done: drying' })).toBeFocused()
  await press(page, 'Enter')
  await expect(page.getByRole('button', { name: 'Done: freezing against insects' })).toBeFocused()
  await press(page, 'Enter')
  const takeIn = page.getByRole('button', { name: 'Take it in' })
  await expect(takeIn).toBeFocused()
  await expect(stop(page)).toContainText('nothing open, 2 done')
  await press(page, 'Enter')
  await expect(page.getByLabel('Amount now')).toBeFocused()
  await expect(page.getByLabel('Why take it in with steps still open?')).toBeHidden()
  await press(page, 'Control+A')
  await type(page, '36 seeds')
  await expectNoBarrier(page)
  await press(page, 'Enter')
  await expect(stop(page)).toContainText('taken in')
  await expect(card(page).getByRole('heading', { name: 'Ferry Blue' })).toBeFocused()
  await expect(card(page).getByRole('region', { name: 'What became of it' })).toContainText('36 seeds')
  await expectNoBarrier(page)
  await expect(rows(page)).toHaveCount(1)
  await page.getByRole('button', { name: 'undo' }).press('Enter')
  await expect(rows(page)).toHaveCount(2)
})

test('wants a reason where steps are open, and keeps what was typed', { tag: '@long' }, async ({
  app,
  page,
}) => {
  const giftId = await offer(app, 'Ferry Blue', [{ step: 'identity' }])
  await open(page, `/take-in/waiting/${giftId}`)
  await page.getByRole('button', { name: 'Take it in' }).press('Enter')
  const why = page.getByLabel('Why take it in with steps still open?')
  await expect(why).toBeFocused()
  await press(page, 'Enter')
  await expect(shown(page, 'still waits for somebody to say what it is')).toBeVisible()
  await type(page, 'the donor is sure')
  await press(page, 'Escape')
  await expect(page.getByRole('button', { name: 'Take it in (begun)' })).toBeFocused()
  await press(page, 'Enter')
  await expect(why).toHaveValue('the donor is sure')
  await press(page, 'Enter')
  await expect(stop(page)).toContainText('taken in')
})

test('lets a gift wait for one more thing, with its day and the usual caution', { tag: '@long' }, async ({
  app,
  page,
}) => {
  const giftId = await offer(app, 'Ferry Blue', [])
  await open(page, `/take-in/waiting/${giftId}`)
  await page.getByRole('button', { name: 'Let it wait' }).press('Enter')
  await expect(page.getByLabel('For what')).toBeFocused()
  await expect(card(page)).toContainText('cobalt')
  await press(page, 'ArrowDown')
  await expect(card(page)).toContainText('Let it warm up closed')
  await page.getByLabel('Done by').fill('2026-12-24')
  await page.getByLabel('Done by').press('Enter')
  await expect(card(page)).toContainText('due 24 Dec 2026')
  await expect(stop(page)).toContainText('1 open')
})

test('declines with a reason, which answers the donor later', { tag: '@long' }, async ({ app, page }) => {
  const giftId = await offer(app, LONG_NAME, [], { story: LONG_NAME, terms: LONG_NAME })
  await offer(app, 'Ferry Blue', [])
  await open(page, `/take-in/waiting/${giftId}`)
  await page.getByRole('button', { name: 'Decline' }).press('Enter')
  await type(page, 'mould')
  await press(page, 'Enter')
  await expect(stop(page)).toContainText('mould')
  await expect(rows(page)).toHaveCount(1)
  await page.getByRole('combobox', { name: 'When a donor asks what became of it' }).focus()
  await type(page, 'zoe')
  await press(page, 'Enter')
  await expect(
    shown(page, 'Gifts of Zoë Brontë: 1 waits, 1 declined and 3 taken in at the table.'),
  ).toBeVisible()
  await expect(rows(page)).toHaveCount(2)
  await expectNoBarrier(page)
})

test('releases a lot from quarantine in place', { tag: '@long' }, async ({ app, page }) => {
  await open(page, '/take-in/waiting')
  await page.getByRole('button', { name: `Release ${shelf.maize.lotNumber}` }).press('Enter')
  await expect(page.getByLabel('What you checked and found')).toBeFocused()
  await type(page, 'the dust is chalk')
  await press(page, 'Enter')
  await expect(shown(page, 'No lot is in quarantine.')).toBeVisible()
  expect((await app.call('lot.get', { lotId: shelf.maize.lotId })).quarantined).toBe(false)
})

test('goes through the list by arrows, and fits a narrow window', { tag: '@long' }, async ({ app, page }) => {
  await offer(app, 'Ferry Blue', [])
  await offer(app, LONG_NAME, [{ step: 'legal' }])
  await open(page, '/take-in/waiting')
  await expect(rows(page).first()).toBeFocused()
  await press(page, 'ArrowDown')
  await expect(rows(page).nth(1)).toBeFocused()
  await expect(card(page).getByRole('heading', { name: LONG_NAME })).toBeVisible()
  await page.setViewportSize({ width: 320, height: 800 })
  expect(await page.evaluate('document.documentElement.scrollWidth')).toBeLessThanOrEqual(320)
  await expectNoBarrier(page)
})
