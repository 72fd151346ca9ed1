import { expectNoBarrier } from './support/axe.ts'
import { open } from './support/open.ts'
import { expect, test } from './support/test.ts'

test.use({ drawer: 'empty' })

const LIST =
  'Crop;Variety;Year;Amount;Donor;Where kept\n' +
  'Pea;Weir Marrowfat;2024;80;Ada Fennimore;Tin 1\n' +
  'Pea;Lantern;2023;12,5;Tobias Wren;Tin 1\n' +
  'Pea;Old Tithe;2023;some;;Tin 1\n'

test('a list is looked at, its doubts are answered, it comes in by keyboard and is taken back as one', async ({
  app,
  page,
}) => {
  await open(page, '/take-in/list')
  const file = page.getByLabel(/^The list: a workbook/)
  await expect(file).toBeFocused()
  await file.setInputFiles({ name: 'tins.csv', mimeType: 'text/csv', buffer: Buffer.from(LIST) })
  const unit = page.getByLabel(/^What are the numbers without a unit under ‘Amount’/)
  await expect(unit).toBeVisible()
  await expectNoBarrier(page)
  await unit.selectOption('g')
  await page.getByLabel(/^There is no storage place ‘Tin 1’/).selectOption('new')
  await expect(page.getByRole('heading', { name: 'What you answered' })).toBeVisible()
  await expect(page.getByRole('main')).toContainText('‘some’ is not an amount.')
  const takeIn = page.getByRole('button', { name: 'Take 2 gifts in' })
  await expect(takeIn).toBeDisabled()
  await page.getByLabel('leave out the 1 row that cannot come in').press('Space')
  await takeIn.press('Enter')
  await expect(page.getByRole('heading', { name: '2 gifts came in' })).toBeFocused()
  expect((await app.call('collection.get', {})).lots).toBe(2)
  await page.getByRole('contentinfo').getByRole('button', { name: /undo/i }).press('Enter')
  await expect(page.getByRole('contentinfo').getByRole('status')).toContainText('Undone: Took in 2 gifts')
  expect((await app.call('lot.list', {})).total).toBe(0)
})
