import { expectNoBarrier } from './support/axe.ts'
import { open } from './support/open.ts'
import { shown } from './support/shown.ts'
import { fillSmallShelf } from './support/small-shelf.ts'
import { expect, test } from './support/test.ts'

test.use({ drawer: 'empty' })

test.beforeEach(async ({ app, page }) => {
  await fillSmallShelf(app)
  await page.reload()
  await open(page, '/settings')
})

test('settings are kept, as so many of a hundred and with a comma', { tag: '@long' }, async ({
  app,
  page,
}) => {
  await page.getByLabel('Its name, as on labels and letters').fill('Penhallow’s Seed Room')
  await page.getByLabel('Of 100 living seeds sown, how many become plants').fill('72,5')
  await page.getByLabel('Dates and numbers as in').selectOption('de-DE')
  await expect(shown(page, 'It looks like this: ')).toContainText('12,5 g')
  await page.getByLabel('Weights in').selectOption('ounces')
  await expect(shown(page, 'It looks like this: ')).toContainText('0,441 oz')
  await page.getByRole('button', { name: 'Save these settings' }).click()
  await expect(page.getByRole('contentinfo')).toContainText('Changed the settings')
  await expect(page.getByRole('contentinfo')).toContainText('Penhallow’s Seed Room')
  const { settings } = await app.call('collection.get', {})
  expect(settings).toMatchObject({ libraryName: 'Penhallow’s Seed Room', emergence: 0.725 })
  expect(settings).toMatchObject({ locale: 'de-DE', massUnits: 'ounces' })
})

test('a pattern shows the number it prints, and one that a spreadsheet would spoil says why', {
  tag: '@long',
}, async ({ page }) => {
  const pattern = page.getByLabel('Accession numbers')
  await pattern.fill('QL{yyyy}-{###}')
  await expect(shown(page, /^prints QL\d{4}-142;/)).toBeVisible()
  await pattern.fill('MAR-{####}')
  await expect(shown(page, /turns MAR and a number into a date/).first()).toBeVisible()
  await expect(page.getByRole('button', { name: 'Save these settings' })).toBeDisabled()
})

test('light and dark are chosen at once and last', { tag: '@long' }, async ({ page }) => {
  const ground = () => page.evaluate<string>('getComputedStyle(document.documentElement).backgroundColor')
  await page.emulateMedia({ colorScheme: 'light' })
  const light = await ground()
  await page.getByLabel('dark, like the evening').check()
  await expect(page.locator('html')).toHaveAttribute('data-appearance', 'dark')
  expect(await ground()).not.toBe(light)
  await page.reload()
  await expect(page.locator('html')).toHaveAttribute('data-appearance', 'dark')
})

test('the book is checked and backed up', { tag: '@long' }, async ({ page }) => {
  await page.getByRole('button', { name: 'Check the book' }).click()
  await expect(shown(page, 'The book is right: 3 lots')).toBeVisible()
  await page.getByRole('button', { name: 'Back up now' }).click()
  await expect(shown(page, /was checked and is good/)).toBeVisible()
  await expect(page.getByRole('contentinfo')).toContainText('Backed up to')
  await expectNoBarrier(page)
})

test('what was written is listed by day, one step from the foot of the window, and taken back', {
  tag: '@long',
}, async ({ app, page }) => {
  await page.getByRole('contentinfo').getByRole('link', { name: 'what was written today' }).press('Enter')
  await expect(page.getByRole('heading', { name: 'What was written', level: 1 })).toBeVisible()
  await expectNoBarrier(page)
  await page
    .getByRole('main')
    .getByRole('button', { name: /undo this entry/ })
    .click()
  await expect(shown(page, '(undone)')).toBeVisible()
  expect((await app.call('lot.list', {})).total).toBe(0)
})

test('a backup is looked into and restored into a new file, by keyboard alone', { tag: '@long' }, async ({
  app,
  page,
}) => {
  await page.getByRole('button', { name: 'Back up now' }).press('Enter')
  await expect(shown(page, /was checked and is good/)).toBeVisible()
  const before = await app.call('collection.get', {})
  await app.call('place.create', { name: 'Cellar', kind: 'room' })
  await page.getByRole('button', { name: /^look into it: .* made by hand$/ }).press('Enter')
  const difference = page.getByRole('form', { name: 'What this backup holds' })
  await expect(difference.getByText(/entry of today’s book is not in it/)).toBeVisible()
  await expect(difference.getByText(/Cellar/)).toBeVisible()
  await expect(difference.getByRole('button', { name: 'Not now' })).toBeFocused()
  await expectNoBarrier(page)
  await difference.getByRole('button', { name: 'Restore it into a new file and open that' }).press('Enter')
  await expect(shown(page, /It is kept in .* restored /)).toBeVisible()
  const after = await app.call('collection.get', {})
  expect(after).toMatchObject({ lots: before.lots, movements: before.movements })
  expect((await app.call('place.list', {})).places.map(({ name }) => name)).not.toContain('Cellar')
})
