import type { Page } from '@playwright/test'
import { expectNoBarrier } from './support/axe.ts'
import { Keys } from './support/keys.ts'
import { open } from './support/open.ts'
import { shown } from './support/shown.ts'
import { type SmallShelf, smallShelf } from './support/small-shelf.ts'
import { expect, test } from './support/test.ts'

test.use({ drawer: 'shelf' })

let shelf: SmallShelf

test.beforeEach(() => {
  shelf = smallShelf()
})

const card = (page: Page) => page.getByRole('article')
const footLine = (page: Page) => page.getByRole('contentinfo').getByRole('status')

/** Finds a lot by a few letters; its plan opens with the focus in its first field. */
async function plan(page: Page, keys: Keys): Promise<void> {
  await open(page, '/germination')
  await page.getByRole('combobox', { name: 'Test a lot' }).focus()
  await keys.type('hrasek')
  await expect(page.getByRole('option', { name: /Climber/ })).toBeVisible()
  await keys.press('Enter')
  await expect(page.getByLabel('Replicates')).toBeFocused()
}

test('four replicates are laid out, counted and ended by keyboard', async ({ app, page }) => {
  const keys = new Keys(page)
  await plan(page, keys)
  await expectNoBarrier(page)
  await keys.press('Control+A')
  await keys.type('4')
  await keys.press('Tab', 'Control+A')
  await keys.type('25')
  await page.getByLabel('On', { exact: true }).fill(shelf.lately)
  await expect(shown(page, '100 of the 300: 33 % of the lot')).toBeVisible()
  await keys.press('Enter')
  const cell = (name: string) => page.getByRole('textbox', { name, exact: true })
  await expect(cell('Normal, replicate 1')).toBeFocused()
  for (const count of ['24', '23', '25', '24']) {
    await keys.type(count)
    await keys.press('Enter')
  }
  await expect(cell('Abnormal, replicate 1')).toBeFocused()
  await keys.press('ArrowDown', 'ArrowDown', 'ArrowUp')
  await expect(cell('Hard, replicate 1')).toBeFocused()
  await keys.press('Control+Enter')
  await expect(card(page)).toContainText('96 of 100 sprouted so far, 4 still there')
  await expect(cell('Normal, replicate 2')).toHaveValue('23')
  await page.getByRole('button', { name: /^correct/ }).press('Enter')
  await expect(cell('Normal, replicate 1')).toBeFocused()
  await expect(shown(page, 'was counted already')).toBeVisible()
  await page.getByRole('button', { name: 'Count the rest as dead' }).press('Enter')
  await expect(cell('Dead, replicate 2')).toHaveValue('2')
  await keys.press('Control+Enter')
  await expect(page.getByRole('form', { name: 'End the test' }).getByLabel('On')).toBeFocused()
  await keys.press('Enter')
  await expect(card(page)).toContainText('Finished on')
  await expect(card(page)).toContainText('96 of 100 sprouted: between 90 % and 98 %; surely above 85 %')
  await expect(
    card(page).getByRole('img', { name: /^Germination by day\. By day 7, 96 of 100/ }),
  ).toBeVisible()
  await expect(card(page).getByRole('heading', { level: 2 })).toBeFocused()
  await expectNoBarrier(page)
  await page.setViewportSize({ width: 320, height: 800 })
  expect(await page.evaluate('document.documentElement.scrollWidth')).toBeLessThanOrEqual(320)
  const { germination, quantity } = await app.call('lot.get', { lotId: shelf.bean.lotId })
  expect(germination[0]).toMatchObject({ tested: 100, sprouted: 96 })
  expect(quantity.count).toBe(200)
})

test('more than was laid out is refused at its cell and outlives the window, and a test given up before it was wet gives its seeds back', {
  tag: '@long',
}, async ({ page, app }) => {
  const { testId } = await app.call('germination.start', {
    lotId: shelf.bean.lotId,
    on: shelf.today,
    replicates: [20, 20],
    finalDay: 8,
  })
  const keys = new Keys(page)
  await open(page, `/shelf/lot/${shelf.bean.lotId}`)
  await expect(page.getByRole('link', { name: 'A test is under way' })).toBeVisible()
  await open(page, '/germination')
  const row = page.getByRole('link', { name: /last count on/ })
  await expect(row).toHaveAttribute('aria-current', 'true')
  await row.press('Enter')
  const first = page.getByRole('textbox', { name: 'Normal, replicate 1', exact: true })
  await expect(first).toBeFocused()
  await keys.type('21')
  await keys.press('Control+Enter')
  await expect(shown(page, 'that is 1 more than were still there')).toBeVisible()
  await expect(first).toBeFocused()
  await page.reload()
  await expect(first).toHaveValue('21')
  await page.getByRole('button', { name: 'Give up the test' }).press('Enter')
  await expect(page.getByLabel('Why')).toBeFocused()
  await keys.type('wrong lot')
  await page.getByRole('checkbox', { name: /stayed dry/ }).press('Space')
  await expect(shown(page, 'Moist seed spoils')).toBeVisible()
  await expectNoBarrier(page, '.germ-card')
  await page.getByLabel('Why').press('Enter')
  await expect(card(page)).toContainText('wrong lot; the seeds went back into the stock')
  expect((await app.call('lot.get', { lotId: shelf.bean.lotId })).quantity.count).toBe(300)
  expect((await app.call('germination.get', { testId })).state).toBe('cancelled')
})

test('twenty seeds in a towel are entered in one go, and a next stage decides', { tag: '@long' }, async ({
  app,
  page,
}) => {
  const keys = new Keys(page)
  await plan(page, keys)
  await page.getByRole('button', { name: /^It is finished/ }).press('Enter')
  await expect(page.getByLabel('seeds laid out', { exact: true })).toBeFocused()
  await keys.type('20')
  await keys.press('Tab')
  await keys.type('17')
  await keys.press('Enter')
  await expect(footLine(page)).toContainText('17 of 20 sprouted: between 64 % and 95 %')
  await page.getByRole('button', { name: 'Finished', exact: true }).press('Enter')
  await expect(page.getByRole('list', { name: 'Finished' })).toContainText('17 of 20 sprouted')
  expect((await app.call('lot.get', { lotId: shelf.bean.lotId })).quantity.count).toBe(280)
  const stage = page.getByRole('checkbox', { name: /^the next stage: 17 of 20/ })
  await stage.press('Space')
  await expect(page.getByLabel('seeds in each', { exact: false })).toHaveValue('20')
  await stage.press('Enter')
  await expect(page.getByRole('textbox', { name: 'Normal', exact: true })).toBeFocused()
  await expect(page.getByRole('region', { name: 'In stages' })).toContainText('17 of 20')
})
