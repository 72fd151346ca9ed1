import type { Page } from '@playwright/test'
import { expectNoBarrier } from './support/axe.ts'
import { press, scan, type } from './support/keys.ts'
import { open } from './support/open.ts'
import { shown } from './support/shown.ts'
import { type SmallShelf, smallShelf } from './support/small-shelf.ts'
import { expect, test } from './support/test.ts'

test.use({ drawer: 'shelf' })

let shelf: SmallShelf

test.beforeEach(() => {
  shelf = smallShelf()
})

const found = (page: Page) => page.getByLabel('Found', { exact: true })
const lotInHand = (page: Page) => page.getByRole('group', { name: 'Lot in hand' })
/** The hand lets go of the keys and takes up the reader. */
const TAKEN_UP_MS = 400
const total = (page: Page) => page.getByRole('status').filter({ hasText: 'looked at' })

test('goes through a place by keyboard, shows what differs, posts it together and undoes it', {
  tag: '@long',
}, async ({ app, page }) => {
  const { bean, maize, shelfId, today } = shelf
  await app.call('lot.move', { lotIds: [maize.lotId], placeId: shelfId, on: today })
  await open(page, '/stocktake')
  await expect(page.getByLabel('Which place?', { exact: true })).toBeFocused()
  await expectNoBarrier(page)
  await type(page, 'wind')
  await press(page, 'Enter')
  await expect(found(page)).toBeFocused()
  await type(page, '280 seeds')
  await expect(lotInHand(page)).toContainText('−20 seeds')
  await press(page, 'Enter')
  await expect(lotInHand(page)).toContainText('Lot 2 of 2')
  await type(page, 'nothing')
  await expect(lotInHand(page)).toContainText('Nothing is left in it.')
  await expect(total(page)).toHaveText('2 of 2 looked at, 2 differ')
  await expectNoBarrier(page)
  await press(page, 'Escape')
  await expect(found(page)).toHaveValue('280 seeds')
  await press(page, 'Control+Enter')
  await expect(page.getByLabel('Why it may differ')).toBeFocused()
  await expect(shown(page, 'Say in a few words why')).toBeVisible()
  await type(page, 'yearly stocktake')
  await press(page, 'Control+Enter')
  await expect(page.getByRole('heading', { name: 'Saved: 2 lots' })).toBeVisible()
  const count = async (lotId: number) => (await app.call('lot.get', { lotId })).quantity.count
  expect([await count(bean.lotId), await count(maize.lotId)]).toEqual([280, 0])
  await page.getByRole('button', { name: 'undo' }).press('Enter')
  await expect.poll(() => count(bean.lotId)).toBe(300)
})

test('keeps an unfinished stocktake, and takes a scanned lot that stands elsewhere', {
  tag: '@long',
}, async ({ page }) => {
  const { bean, tomato, shelfId } = shelf
  await open(page, `/stocktake/${shelfId}`)
  await expect(found(page)).toBeFocused()
  await type(page, 'about 250 seeds')
  await expect(total(page)).toContainText('1 of 1 looked at, 1 differ')
  await scan(page, tomato.scanCode, { inMs: TAKEN_UP_MS })
  await expect(lotInHand(page).getByRole('heading')).toContainText(tomato.lotNumber)
  await expect(shown(page, 'no place in the book')).toBeVisible()
  await expect(found(page)).toHaveValue('')
  await type(page, '12')
  await press(page, 'Escape')
  await expect(total(page)).toContainText('2 of 2 looked at')
  await page.reload()
  await expect(total(page)).toContainText('2 of 2 looked at')
  await expect(lotInHand(page).getByRole('heading')).toContainText(bean.lotNumber)
  await expect(found(page)).toHaveValue('about 250 seeds')
  await page.setViewportSize({ width: 320, height: 800 })
  expect(await page.evaluate('document.documentElement.scrollWidth')).toBeLessThanOrEqual(320)
})
