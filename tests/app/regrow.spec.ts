import type { Page } from '@playwright/test'
import { expectNoBarrier } from './support/axe.ts'
import { press, type } from './support/keys.ts'
import { open } from './support/open.ts'
import { shown } from './support/shown.ts'
import { expect, test } from './support/test.ts'

test.use({ drawer: 'shelf' })

const rows = (page: Page) => page.getByRole('list', { name: 'Needs' }).getByRole('link')
const card = (page: Page) => page.getByRole('main').getByRole('article')

test('ranks what is in need, opens why, ticks it by keyboard, saves the list and looks it up', async ({
  page,
}) => {
  await open(page, '/regrow')
  await expect(rows(page)).toHaveCount(3)
  const last = rows(page).filter({ hasText: 'Widow Tarn' })
  await expect(last).toContainText('rescue')
  await expectNoBarrier(page)

  await last.focus()
  await press(page, 'Space')
  await expect(last).toContainText('to grow')
  await page.reload()
  await expect(last).toContainText('to grow')
  await last.focus()
  await press(page, 'Enter')
  await expect(card(page).getByRole('heading', { name: 'Widow Tarn' })).toBeFocused()
  await expect(card(page).getByLabel('Grow it this season')).toBeChecked()
  await expect(card(page)).toContainText('The last there is')
  await card(page).getByText('To sow', { exact: true }).press('Enter')
  await expect(card(page)).toContainText('12 plants / (')
  await expectNoBarrier(page)

  await page.getByRole('button', { name: /^Save the list of season \d+, 1 to grow/ }).press('Enter')
  await page.getByLabel('Note').focus()
  await type(page, 'Ask Zoe for more')
  await press(page, 'Enter')
  await expect(shown(page, /^Saved the list of season \d+: 1 of/)).toBeVisible()
  await page.getByRole('link', { name: 'Past season lists' }).press('Enter')
  const line = page.getByRole('row').filter({ hasText: 'Widow Tarn' })
  await expect(line).toContainText('to grow')
  await expect(line).toContainText('nothing went out to be grown')
  await expect(shown(page, 'Ask Zoe for more')).toBeVisible()
  await expectNoBarrier(page)
})

test('takes another grade for the library and another reserve for one accession', { tag: '@long' }, async ({
  page,
}) => {
  await open(page, '/regrow')
  await rows(page).filter({ hasText: 'Climber' }).press('Enter')
  await expect(card(page)).toContainText('keep at least 45')
  await page.getByRole('button', { name: 'Change when and for what' }).press('Enter')
  await page.getByLabel('Regrow for').selectOption('conservation')
  await page.getByRole('button', { name: 'Save', exact: true }).press('Enter')
  await expect(card(page)).toContainText('keep at least 171')
  await card(page).getByRole('button', { name: 'Change what to keep of it' }).press('Enter')
  const reserve = card(page).getByLabel('Regrowings held in reserve')
  await reserve.fill('none')
  await expect(card(page)).toContainText('Type a whole number from 1 to 20.')
  await reserve.fill('2')
  const sure = card(page).getByLabel('Of 100 sowings')
  await sure.fill('100')
  await expect(card(page)).toContainText('Type a number from 50 to 99.')
  await sure.fill('50')
  await sure.press('Enter')
  await expect(card(page)).toContainText('keep at least 100')
})
