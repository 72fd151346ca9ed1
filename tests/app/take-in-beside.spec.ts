import type { Page } from '@playwright/test'
import { expectNoBarrier } from './support/axe.ts'
import { open } from './support/open.ts'
import { shown } from './support/shown.ts'
import { LONG_NAME } from './support/small-shelf.ts'
import { atTheTable, envelopes, field, gift } from './support/take-in-table.ts'
import { answerLate, expect, test } from './support/test.ts'

const problem = (page: Page, text: string) => shown(page, text)

test.describe('taking in, beside what is there', () => {
  test.use({ drawer: 'shelf' })

  test.beforeEach(async ({ app }) => {
    await app.call('person.create', { name: 'Zoë Brontë', town: 'Upper Fenwick', roles: ['donor'] })
  })

  test('two donors of one name are told apart, and accents need not be typed', { tag: '@long' }, async ({
    page,
  }) => {
    const keys = await atTheTable(page)
    await keys.type('zoe bron')
    const options = page.getByRole('listbox', { name: 'Who brings it?: what fits' }).getByRole('option')
    await expect(options.filter({ hasText: 'Zoë Brontë' })).toHaveCount(2)
    await expect(options.filter({ hasText: 'Quillhaven' })).toHaveCount(1)
    await expect(options.filter({ hasText: 'Upper Fenwick' })).toHaveCount(1)
    await expectNoBarrier(page)
    await page.getByRole('combobox', { name: 'Who brings it?' }).focus()
    await keys.press('ArrowDown', 'Escape')
    await expect(options).toHaveCount(0)
    await expect(page.getByRole('combobox', { name: 'Who brings it?' })).toHaveValue('zoe bron')
    await keys.press('ArrowDown', 'Enter')
    await expect(field(page, 'Variety')).toBeFocused()
    await keys.type('hrasek')
    await keys.press('Enter')
    await expect(field(page, 'Variety')).toHaveValue('Hrášek’s Climber')
    await expect(field(page, 'Harvest year')).toBeFocused()
  })

  test('the reading of an amount moves no button beneath it', async ({ page }) => {
    const keys = await atTheTable(page)
    const buttonAt = async () =>
      (await page.getByRole('button', { name: 'Add this gift' }).boundingBox())?.y ?? Number.NaN
    const withoutCrop = await buttonAt()
    await field(page, 'Amount').fill('3 packets of 25')
    await expect(shown(page, '75 seeds')).toBeVisible()
    expect(await buttonAt()).toBe(withoutCrop)
    await field(page, 'Amount').fill('')
    await field(page, 'Variety').focus()
    await keys.type('hrasek')
    await keys.press('Enter')
    await expect(field(page, 'Harvest year')).toBeFocused()
    const withCrop = await buttonAt()
    await field(page, 'Amount').fill('30 seeds')
    await expect(shown(page, /^30 seeds, about/)).toBeVisible()
    expect(await buttonAt()).toBe(withCrop)
  })

  test('keys pressed while a name is still being looked for do their work afterwards', async ({ page }) => {
    const keys = await atTheTable(page)
    await answerLate(page, () => 400)
    await keys.type('zoe')
    await keys.press('Enter')
    await keys.type('hrasek')
    await keys.press('Enter')
    await keys.type('2023')
    await keys.press('Enter')
    await keys.type('40 seeds')
    await keys.press('Enter', 'Enter')
    await expect(envelopes(page)).toContainText('Hrášek’s Climber')
    await expect(envelopes(page)).toContainText('40 seeds')
    await expect(envelopes(page)).toContainText('2023')
    await expect(field(page, 'Variety')).toBeFocused()
    await expect(field(page, 'Variety')).toHaveValue('')
  })

  test('a variety that the visit before brought is found, and not added once more', { tag: '@long' }, async ({
    page,
    app,
  }) => {
    const keys = await atTheTable(page)
    await keys.press('Enter', 'Enter')
    await gift(keys, 'Ferry Blue', 'pea', '2023', '40 seeds')
    await keys.press('Control+Enter')
    await expect(page.getByRole('button', { name: 'Next donor' })).toBeFocused()
    await answerLate(page, () => 400)
    await keys.press('Enter', 'Enter', 'Enter')
    await expect(field(page, 'Variety')).toBeFocused()
    await keys.type('Ferry Blue')
    await page.getByRole('option', { name: /Add Ferry Blue/ }).waitFor()
    await keys.press('Enter')
    await expect(field(page, 'Harvest year')).toBeFocused()
    await expect(field(page, 'Its crop')).toHaveCount(0)
    const { varieties } = await app.call('variety.search', { text: 'ferry' })
    expect(varieties).toHaveLength(1)
  })

  test('Escape steps back a field and throws nothing away', { tag: '@long' }, async ({ page }) => {
    const keys = await atTheTable(page)
    await keys.press('Enter', 'Enter')
    await keys.type('hrasek')
    await keys.press('Enter')
    await keys.type('2023')
    await keys.press('Escape')
    await expect(field(page, 'Variety')).toBeFocused()
    await keys.press('Escape')
    await expect(page.getByRole('combobox', { name: 'Who brings it?' })).toBeFocused()
    await keys.press('Escape', 'Escape')
    await expect(field(page, 'Harvest year')).toHaveValue('2023')
    await expect(field(page, 'Variety')).toHaveValue('Hrášek’s Climber')
  })

  test('what is refused stays as typed, with its sentence at the field', { tag: '@long' }, async ({
    page,
    app,
  }) => {
    const before = (await app.call('lot.list', { limit: 1 })).total
    const keys = await atTheTable(page)
    await keys.type('Ilka Brandt')
    await keys.press('Enter')
    await keys.type('Sallow End')
    await keys.press('Enter', 'Enter', 'Space', 'Enter')
    await keys.type('ilka at the ferry')
    await keys.press('Enter')
    await keys.type('hrasek')
    await keys.press('Enter')
    await keys.type('2031')
    await keys.press('Enter')
    await keys.type('0')
    await keys.press('Enter', 'Control+Enter')
    await expect(field(page, 'Harvest year')).toBeFocused()
    await expect(problem(page, '2031 has not come yet')).toBeVisible()
    await expectNoBarrier(page)
    await field(page, 'Harvest year').focus()
    await keys.press('Control+a')
    await keys.type('2023')
    await keys.press('Control+Enter')
    await expect(field(page, 'Amount')).toBeFocused()
    await expect(field(page, 'Amount')).toHaveValue('0')
    await keys.press('Control+a')
    await keys.type('40 seeds')
    await keys.press('Control+Enter')
    await expect(field(page, 'E-mail')).toBeFocused()
    await expect(problem(page, 'That does not look like an e-mail address.')).toBeVisible()
    await expect(field(page, 'E-mail')).toHaveValue('ilka at the ferry')
    await expect(envelopes(page)).toHaveCount(1)
    expect((await app.call('lot.list', { limit: 1 })).total).toBe(before)
    await keys.press('Control+a')
    await keys.type('ilka@ferry.example')
    await keys.press('Control+Enter')
    await expect(page.getByRole('heading', { name: 'Taken in: one gift from Ilka Brandt' })).toBeVisible()
  })

  test('a gift on the list can be changed and taken off, and what was being typed comes back', {
    tag: '@long',
  }, async ({ page }) => {
    const keys = await atTheTable(page)
    await keys.press('Enter', 'Enter')
    await keys.type('hrasek')
    await keys.press('Enter', 'Enter')
    await keys.type('40 seeds')
    await keys.press('Enter', 'Enter')
    await keys.type('widow')
    await page.getByRole('button', { name: 'change Hrášek’s Climber' }).click()
    await expect(page.getByRole('heading', { name: 'Gift 1, being changed' })).toBeVisible()
    await field(page, 'Amount').fill('50 seeds')
    await field(page, 'Counted sample').focus()
    await keys.press('Enter')
    await expect(envelopes(page)).toContainText('50 seeds')
    await expect(field(page, 'Variety')).toHaveValue('widow')
    await page.getByRole('button', { name: 'remove Hrášek’s Climber' }).click()
    await expect(envelopes(page)).toHaveCount(0)
    await page.getByRole('button', { name: 'put it back' }).click()
    await expect(envelopes(page)).toContainText('50 seeds')
  })

  test('an unfinished visit is there again after a reload, letter by letter', async ({ page }) => {
    const keys = await atTheTable(page)
    await keys.type('zoe')
    await keys.press('Enter')
    await keys.type('hrasek')
    await keys.press('Enter', 'Enter')
    await keys.type('40 seeds')
    await keys.press('Enter', 'Enter')
    await keys.type('Half typ')
    await page.reload()
    await expect(field(page, 'Variety')).toHaveValue('Half typ')
    await expect(field(page, 'Variety')).toBeFocused()
    await expect(envelopes(page)).toContainText('40 seeds')
    await expect(page.getByRole('combobox', { name: 'Who brings it?' })).toHaveValue('Zoë Brontë')
  })

  test('two windows at two tables keep to their own visits', { tag: '@long' }, async ({
    page,
    context,
    app,
  }) => {
    const keys = await atTheTable(page)
    await keys.type('zoe')
    await keys.press('Enter')
    const second = await context.newPage()
    await second.goto(app.address)
    await open(second, '/take-in')
    const who = second.getByRole('combobox', { name: 'Who brings it?' })
    await expect(who).toHaveValue('')
    await expect(shown(second, 'Unfinished')).toHaveCount(0)
    await page.close()
    await second.reload()
    await expect(shown(second, 'Unfinished: Zoë Brontë, no gift listed yet')).toBeVisible()
    await second.getByRole('button', { name: 'go on with it' }).click()
    await expect(who).toHaveValue('Zoë Brontë')
  })

  test('long names, a narrow window and large text leave nothing out of reach', { tag: '@long' }, async ({
    page,
  }) => {
    await page.setViewportSize({ width: 320, height: 720 })
    const keys = await atTheTable(page)
    await keys.press('Enter', 'Enter')
    await keys.type('harrow')
    await keys.press('Enter', 'Enter')
    await keys.type('85 g')
    await keys.press('Enter', 'Enter')
    await expect(envelopes(page)).toContainText(LONG_NAME)
    await expectNoSidewaysScroll(page)
    await expectNoBarrier(page)
    await page.setViewportSize({ width: 1280, height: 800 })
    // Twice the text size: the media and container queries in rem answer as they do to the browser's own setting.
    await page.evaluate("document.documentElement.style.fontSize = '200%'")
    await expectNoSidewaysScroll(page)
    await page.getByRole('button', { name: 'Save the visit' }).scrollIntoViewIfNeeded()
    await expect(page.getByRole('button', { name: 'Save the visit' })).toBeInViewport()
  })
})

async function expectNoSidewaysScroll(page: Page): Promise<void> {
  const wider = await page.evaluate(
    "document.querySelector('main').scrollWidth - document.querySelector('main').clientWidth",
  )
  expect(wider, 'nothing is wider than the window').toBe(0)
}
