import type { Page } from '@playwright/test'
import { expectNoBarrier } from './support/axe.ts'
import { keysOfRows } from './support/keys.ts'
import { shown } from './support/shown.ts'
import { atTheTable, envelopes, field, gift } from './support/take-in-table.ts'
import { expect, test } from './support/test.ts'

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
    await expect(field(page, 'Where it was grown')).toBeFocused()
    await keys.press('Enter')
    await keys.type('From a feed sack.')
    await keys.press('Enter', 'Enter', 'Enter')
    await expect(page.getByRole('checkbox', { name: 'The donor set limits' })).toBeFocused()
    await keys.press('Enter')
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
