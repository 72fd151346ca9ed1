import type { Page } from '@playwright/test'
import { expectNoBarrier } from './support/axe.ts'
import { press, type } from './support/keys.ts'
import { open } from './support/open.ts'
import { shown } from './support/shown.ts'
import { type SmallShelf, smallShelf } from './support/small-shelf.ts'
import { expect, test } from './support/test.ts'

test.use({ drawer: 'shelf' })

let shelf: SmallShelf

test.beforeEach(() => {
  shelf = smallShelf()
})

const who = (page: Page) => page.getByRole('combobox', { name: 'Who took it?' })
const field = (page: Page, name: string) => page.getByLabel(name, { exact: true })

/** Picks the bean for the line and lists it with an amount. */
async function takesBeans(page: Page, amount: string, leaves: RegExp): Promise<void> {
  await expect(field(page, 'Lot')).toBeFocused()
  await type(page, 'hrasek')
  await press(page, 'Enter')
  await expect(field(page, 'Amount')).toBeFocused()
  await type(page, amount)
  await expect(shown(page, leaves)).toBeVisible()
  await press(page, 'Enter')
  await expect(who(page)).toBeFocused()
}

/** Adds somebody of whom only the name stands on the sheet. */
async function newPerson(page: Page, name: string): Promise<void> {
  await type(page, name)
  await press(page, 'Enter')
  await expect(field(page, 'Town')).toBeFocused()
  await press(page, 'Enter')
  await press(page, 'Enter')
  await press(page, 'Enter')
}

test('types a sheet in by keyboard, survives a reload, saves as one and is undone as one', {
  tag: '@long',
}, async ({ app, page }) => {
  await open(page, '/hand-out/paper')
  await expect(field(page, 'Day on the sheet')).toBeFocused()
  await expectNoBarrier(page)
  await field(page, 'Day on the sheet').fill(shelf.lately)
  await press(page, 'Enter')
  await newPerson(page, 'Ilka Brandt')
  await takesBeans(page, '20 seeds', /has 280 seeds left/)
  await type(page, 'zoe')
  await press(page, 'Enter')
  await takesBeans(page, '30 seeds', /has 250 seeds left/)
  await type(page, 'ilka')
  await press(page, 'Enter')
  await takesBeans(page, '10 seeds', /has 240 seeds left/)
  await expect(page.getByRole('status').filter({ hasText: 'lines' })).toHaveText('3 lines')
  await expectNoBarrier(page)
  await page.reload()
  await expect(page.getByRole('status').filter({ hasText: 'lines' })).toHaveText('3 lines')
  const written = new Intl.DateTimeFormat('en-GB', { dateStyle: 'medium', timeZone: 'UTC' })
  await expect(field(page, 'Day on the sheet')).toHaveValue(written.format(Date.parse(shelf.lately)))
  await press(page, 'Control+Enter')
  await expect(shown(page, 'Saved: a sheet of 3 lines.')).toBeVisible()
  const lot = () => app.call('lot.get', { lotId: shelf.bean.lotId })
  expect((await lot()).quantity.count).toBe(240)
  expect((await app.call('person.search', { text: 'ilka' })).people).toHaveLength(1)
  await page.getByRole('button', { name: 'undo' }).press('Enter')
  await expect.poll(async () => (await lot()).quantity.count).toBe(300)
})

test('says what a line lacks, and what the lot cannot give', { tag: '@long' }, async ({ page }) => {
  await open(page, '/hand-out/paper')
  await expect(field(page, 'Day on the sheet')).toBeFocused()
  await press(page, 'Control+Enter')
  await expect(shown(page, 'Which day is on the sheet?')).toBeVisible()
  await field(page, 'Day on the sheet').fill(shelf.lately)
  await press(page, 'Enter')
  await press(page, 'Control+Enter')
  await expect(shown(page, 'Nothing is listed yet.')).toBeVisible()
  await type(page, 'zoe')
  await press(page, 'Enter')
  await takesBeans(page, '900 seeds', /holds 300 seeds, less than/)
  await press(page, 'Control+Enter')
  await expect(page.getByRole('heading', { name: 'Line 1, being changed' })).toBeVisible()
  await expect(field(page, 'Amount')).toBeFocused()
  await expect(field(page, 'Amount')).toHaveAccessibleDescription(/holds 300 seeds, less than/)
  await expectNoBarrier(page)
})
