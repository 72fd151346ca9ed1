import type { Page } from '@playwright/test'
import { expectNoBarrier } from './support/axe.ts'
import { keysOfRows } from './support/keys.ts'
import { open } from './support/open.ts'
import { shown } from './support/shown.ts'
import { LONG_NAME } from './support/small-shelf.ts'
import { atTheTable, envelopes, field, gift } from './support/take-in-table.ts'
import { answerLate, expect, test } from './support/test.ts'

const takenIn = (page: Page) => page.getByRole('region', { name: 'Taken in' })
const problem = (page: Page, text: string) => shown(page, text)

test.describe('taking in, on an empty shelf', () => {
  test.use({ drawer: 'empty' })

  test('three gifts of a new donor by keyboard, with fewer keys than the rows of a spreadsheet', async ({
    app,
    page,
  }) => {
    const keys = await atTheTable(page)
    await keys.type('Ilka Brandt')
    await keys.press('Enter')
    await keys.type('Sallow End')
    await keys.press('Enter', 'Enter', 'Enter')
    await expect(field(page, 'Variety')).toBeFocused()
    await gift(keys, 'Ferry Blue', 'pea', '2023', '40 seeds')
    await gift(keys, 'Lantern Row', 'tom', 'about 2019', '1.5 g')
    await gift(keys, 'Old Millpond', 'lett', '', '2 g')
    await expect(envelopes(page)).toHaveCount(3)
    await keys.press('Control+Enter')
    await expect(page.getByRole('heading', { name: 'Taken in: 3 gifts from Ilka Brandt' })).toBeVisible()
    await expect(takenIn(page).getByRole('listitem')).toHaveCount(3)

    const donor = ['Ilka Brandt', 'Sallow End']
    const rows = [
      [...donor, 'Ferry Blue', 'Garden pea', '2023', '40 seeds'],
      [...donor, 'Lantern Row', 'Tomato', 'about 2019', '1.5 g'],
      [...donor, 'Old Millpond', 'Lettuce', '', '2 g'],
    ]
    const inRows = keysOfRows(rows)
    console.log(`Three gifts of a new donor: ${keys.pressed} key presses, as spreadsheet rows ${inRows}.`)
    expect(keys.pressed).toBeLessThan(inRows)

    const { rows: lots } = await app.call('lot.list', {})
    expect(lots.map(({ variety, harvest, quantity }) => [variety, harvest, quantity.words])).toEqual([
      ['Ferry Blue', '2023', '40 seeds'],
      ['Lantern Row', 'about 2019', expect.stringContaining('1.5 g')],
      ['Old Millpond', 'about 2019', expect.stringContaining('2 g')],
    ])
    await keys.press('Enter')
    await expect(page.getByRole('combobox', { name: 'Who brings it?' })).toBeFocused()
  })

  test('an amount that can be meant two ways asks, and is chosen by keyboard', { tag: '@long' }, async ({
    page,
    app,
  }) => {
    const keys = await atTheTable(page)
    await keys.press('Enter', 'Enter')
    await keys.type('Ferry Blue')
    await keys.press('Enter')
    await keys.type('pea')
    await keys.press('Enter', 'Enter')
    await keys.type('30')
    await keys.press('Enter')
    await expect(page.getByRole('button', { name: '30 g', exact: true })).toBeFocused()
    await keys.press('ArrowRight', 'Enter')
    await expect(field(page, 'Amount')).toHaveValue('30 seeds')
    await expect(field(page, 'Counted sample')).toBeFocused()
    await keys.type('25 weigh 6.10 g')
    await expect(shown(page, '24.4 g per hundred, from the sample')).toBeVisible()
    await keys.press('Enter', 'Control+Enter')
    await expect(
      page.getByRole('heading', { name: 'Taken in: one gift from somebody unknown' }),
    ).toBeVisible()
    const { rows } = await app.call('lot.list', {})
    const { weight, donor } = await app.call('lot.get', { lotId: rows[0]?.lotId ?? 0 })
    expect(weight).toMatchObject({ basis: 'measured', gramsPerHundred: 24.4 })
    expect(donor).toBe('')
  })

  test('an amount typed in one go is not asked about', { tag: '@long' }, async ({ app, page }) => {
    expect((await app.call('lot.list', {})).total).toBe(0)
    const keys = await atTheTable(page)
    await keys.press('Enter', 'Enter')
    await keys.type('Ferry Blue')
    await keys.press('Enter')
    await keys.type('pea')
    await keys.press('Enter', 'Enter')
    await keys.type('40')
    await expect(page.getByRole('button', { name: '40 g', exact: true })).toBeVisible()
    await keys.type(' g')
    await keys.press('Enter')
    await expect(field(page, 'Counted sample')).toBeFocused()
    await expect(field(page, 'Amount')).toHaveValue('40 g')
  })

  test('a gift to be careful about says so, and goes into quarantine', { tag: '@long' }, async ({
    page,
    app,
  }) => {
    const keys = await atTheTable(page)
    await keys.press('Enter', 'Enter')
    await keys.type('Yellow Dent')
    await keys.press('Enter')
    await keys.type('maiz')
    await keys.press('Enter', 'Enter')
    await keys.type('85 g')
    await keys.press('Shift+Enter')
    await expect(field(page, 'Where grown')).toBeFocused()
    await keys.press('Enter')
    await keys.type('From a feed sack.')
    await keys.press('Enter', 'Enter', 'Enter')
    await expect(page.getByRole('checkbox', { name: 'treated seed' })).toBeFocused()
    await keys.press('Space')
    await expect(shown(page, 'Do not use for food, feed or oil')).toBeVisible()
    await expect(shown(page, 'until it is checked')).toBeVisible()
    await expectNoBarrier(page)
    await page.getByRole('checkbox', { name: 'treated seed' }).focus()
    await keys.press('Control+Enter')
    await expect(takenIn(page).getByText('in quarantine')).toBeVisible()
    const { rows } = await app.call('lot.list', { quarantined: true })
    expect(rows).toHaveLength(1)
  })

  test('a gift is kept for later or declined on its own line, and only what is taken in gets a number', {
    tag: '@long',
  }, async ({ app, page }) => {
    const keys = await atTheTable(page)
    await keys.type('Ilka Brandt')
    await keys.press('Enter')
    await keys.type('Sallow End')
    await keys.press('Enter', 'Enter', 'Enter')
    await keys.type('Lantern Row')
    await keys.press('Enter')
    await keys.type('tom')
    await keys.press('Enter')
    await expect(field(page, 'Harvest year')).toBeFocused()
    await page.getByRole('button', { name: 'Decline' }).press('Enter')
    await expect(field(page, 'Why is it declined?')).toBeFocused()
    await keys.press('Enter')
    await expect(problem(page, 'The donor may ask one day.')).toBeVisible()
    await expectNoBarrier(page)
    await field(page, 'Why is it declined?').focus()
    await keys.type('mould')
    await keys.press('Enter')
    await expect(envelopes(page)).toContainText('declined: mould')
    await expect(field(page, 'Variety')).toBeFocused()
    await keys.type('Old Millpond')
    await keys.press('Enter')
    await keys.type('lett')
    await keys.press('Enter')
    await expect(field(page, 'Harvest year')).toBeFocused()
    await page.getByRole('button', { name: 'Later' }).press('Enter')
    await expect(field(page, 'What does it wait for?')).toBeFocused()
    await field(page, 'What does it wait for?').selectOption('drying')
    await expect(shown(page, 'cobalt')).toBeVisible()
    await keys.press('Enter')
    await expect(envelopes(page).nth(1)).toContainText('waits for drying')
    await gift(keys, 'Ferry Blue', 'pea', '2023', '40 seeds')
    await keys.press('Control+Enter')
    await expect(page.getByRole('heading', { name: 'Taken in: one gift from Ilka Brandt' })).toBeVisible()
    await expect(takenIn(page)).toContainText('Ferry Blue')
    await expect(page.getByRole('list', { name: 'Without a number' })).toContainText('declined: mould')
    await expectNoBarrier(page)
    const { gifts } = await app.call('gift.list', {})
    expect(gifts.map(({ variety, donor, state }) => [variety, donor, state])).toEqual([
      ['Lantern Row', 'Ilka Brandt', 'declined'],
      ['Old Millpond', 'Ilka Brandt', 'offered'],
    ])
  })

  test('the labels of a visit are made on the spot', { tag: '@long' }, async ({ app, page }) => {
    const { total } = await app.call('lot.list', {})
    expect(total).toBe(0)
    const keys = await atTheTable(page)
    await keys.press('Enter', 'Enter')
    await gift(keys, 'Ferry Blue', 'pea', '2023', '40 seeds')
    await keys.press('Control+Enter')
    await expect(page.getByRole('button', { name: 'Next donor' })).toBeFocused()
    await keys.press('Tab', 'Enter')
    await page.getByRole('button', { name: 'Make the labels' }).press('Enter')
    await expect(page.getByRole('button', { name: 'Print…' })).toBeFocused()
    await expect(page.getByRole('button', { name: 'Print…' })).toBeInViewport()
    await expect(page.getByRole('link', { name: /Save .*\.pdf/ })).toBeVisible()
    await page.getByRole('button', { name: 'They came out well' }).press('Enter')
    await expect(page.getByRole('button', { name: 'They came out well' })).toHaveCount(0)
    expect((await app.call('tray.list', {})).groups).toEqual([])
  })
})

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
      (await page.getByRole('button', { name: 'List this gift' }).boundingBox())?.y ?? Number.NaN
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
    await page.getByRole('button', { name: 'take off Hrášek’s Climber' }).click()
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
