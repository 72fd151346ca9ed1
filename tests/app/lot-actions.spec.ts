import type { Page } from '@playwright/test'
import { expectNoBarrier } from './support/axe.ts'
import { open } from './support/open.ts'
import { shown } from './support/shown.ts'
import { type Lot, type SmallShelf, smallShelf } from './support/small-shelf.ts'
import { expect, test } from './support/test.ts'

test.use({ drawer: 'shelf' })

let shelf: SmallShelf

test.beforeEach(async ({ page }) => {
  shelf = smallShelf()
  await open(page, `/shelf/lot/${shelf.bean.lotId}`)
})

async function openForm(page: Page, action: string): Promise<void> {
  const card = page.getByRole('article')
  if (['Pour together', 'Same variety'].includes(action))
    await card.getByText('More', { exact: true }).click()
  await card.getByRole('button', { name: action, exact: true }).click()
}

const footLine = (page: Page) => page.getByRole('contentinfo').getByRole('status')

test('stock is taken: what was found, why it differs', async ({ app, page }) => {
  await openForm(page, 'Take stock')
  await page.getByLabel(/^Found/).fill('270 seeds')
  await page.getByLabel('Why it differs').fill('spilled')
  await page.getByLabel('Why it differs').press('Enter')
  await expect(footLine(page)).toContainText('Took stock')
  await expect(page.getByRole('row', { name: /stock taken/ })).toContainText('−30')
  await openForm(page, 'Take stock')
  await page.getByLabel('nothing is left').check()
  await page.getByLabel('Why it differs').fill('mice')
  await page.getByRole('button', { name: 'Save what was found' }).click()
  await expect(footLine(page)).toContainText('nothing left')
  expect((await app.call('lot.get', { lotId: shelf.bean.lotId })).quantity.count).toBe(0)
})

test('an amount that can be meant two ways is asked about, and a refusal keeps what was typed', async ({
  page,
}) => {
  await openForm(page, 'Throw away')
  await page.getByLabel('Why').fill('mould')
  await page.getByLabel('How much').fill('500 seeds')
  // Its reading appears under the field and moves the button: nobody presses it before that.
  await expect(page.getByRole('form', { name: 'Throw away' })).toContainText('500 seeds, about 125 g')
  await page.getByRole('button', { name: 'Throw away', exact: true }).last().click()
  await expect(page.getByRole('form', { name: 'Throw away' })).toContainText('300 seeds')
  await expect(page.getByLabel('How much')).toHaveValue('500 seeds')
  await expect(page.getByLabel('Why')).toHaveValue('mould')
})

test('seeds are weighed in portions, and a weight that cannot be is asked about', { tag: '@long' }, async ({
  app,
  page,
}) => {
  await openForm(page, 'Weigh seeds')
  await page.getByLabel('seeds', { exact: true }).fill('25')
  await page.getByLabel('grams', { exact: true }).fill('6,25')
  await expect(shown(page, 'A hundred seeds weigh 25 g.')).toBeVisible()
  await page.getByRole('button', { name: 'another portion' }).click()
  await page.getByLabel('grams, portion 2').fill('6.35')
  await expect(shown(page, /coefficient of variation 1\.1 %: the portions agree/)).toBeVisible()
  await page.getByRole('button', { name: 'Save the weight' }).click()
  await expect(footLine(page)).toContainText('25.2 g per hundred')
  await openForm(page, 'Weigh seeds')
  await page.getByLabel('seeds', { exact: true }).fill('25')
  await page.getByLabel('grams', { exact: true }).fill('0.0625')
  await page.getByRole('button', { name: 'Save the weight' }).click()
  await expect(page.getByRole('alert')).toContainText('look again')
  const { weights } = await app.call('lot.get', { lotId: shelf.bean.lotId })
  expect(weights.map(({ replicates }) => replicates)).toEqual([1, 2])
})

test('a germination result is entered with its interval in words', { tag: '@long' }, async ({
  app,
  page,
}) => {
  await openForm(page, 'Enter germination')
  await page.getByLabel('seeds laid out', { exact: true }).fill('20')
  await page.getByLabel('of them sprouted').fill('15')
  await expect(
    shown(page, /^75\s%; with that many laid out it may be anything from 53\s% to 89\s%$/),
  ).toBeVisible()
  await page.getByRole('button', { name: 'Save the result' }).click()
  await expect(footLine(page)).toContainText('15 of 20 sprouted')
  expect((await app.call('lot.get', { lotId: shelf.bean.lotId })).quantity.count).toBe(280)
})

test('part is split off as a reserve into a place made on the way, then merged back', {
  tag: '@long',
}, async ({ app, page }) => {
  await openForm(page, 'Split')
  await page.getByLabel(/^How much/).fill('100 seeds')
  await page.getByLabel('Where it goes').selectOption({ label: 'a new place…' })
  await page.getByLabel('Its name').fill('Tin box')
  await page.getByLabel('Its name').press('Enter')
  await expect(page.getByLabel('Where it goes')).toContainText('Tin box')
  await page.getByRole('button', { name: 'Split it off' }).click()
  const others = page.getByRole('row', { name: /reserve .*100 seeds/ })
  await expect(others).toBeVisible()
  await openForm(page, 'Pour together')
  await page.getByRole('checkbox', { name: /reserve/ }).check()
  await page.getByRole('button', { name: 'Pour together', exact: true }).last().click()
  await expect(page.getByRole('row', { name: /poured together/ })).toBeVisible()
  expect((await app.call('lot.get', { lotId: shelf.bean.lotId })).quantity.count).toBe(300)
})

test('a duplicate elsewhere asks who holds it', { tag: '@long' }, async ({ page }) => {
  await openForm(page, 'Split')
  await page.getByLabel(/^How much/).fill('50 seeds')
  await page.getByLabel('The new lot is').selectOption({ label: 'safety duplicate, kept elsewhere' })
  await page.getByLabel('Who holds it').fill('Fenwick seed circle')
  await page.getByRole('button', { name: 'Split it off' }).click()
  await page
    .getByRole('article')
    .getByRole('row', { name: /safety duplicate/ })
    .getByRole('link')
    .click()
  await expect(page.getByRole('article')).toContainText('Fenwick seed circle')
})

test('a lot is moved, and where it stood is kept', { tag: '@long' }, async ({ page }) => {
  await openForm(page, 'Move')
  await page.getByLabel('To', { exact: true }).selectOption({ label: 'Seed room' })
  await page.getByRole('button', { name: 'Move it there' }).click()
  const history = page
    .getByRole('article')
    .locator('section', { has: page.getByRole('heading', { name: 'Where it was kept' }) })
  await expect(history).toContainText('Window shelf')
})

test('a lot is kept back, and released once it was checked; whoever goes on meanwhile stays there', async ({
  app,
  page,
}) => {
  await openForm(page, 'Quarantine')
  await page.getByRole('button', { name: 'Put it in quarantine' }).click()
  await expect(page.getByLabel('What to check')).toHaveAttribute('aria-invalid', 'true')
  await page.getByLabel('What to check').fill('small holes')
  await page.getByRole('button', { name: 'Put it in quarantine' }).click()
  await expect(page.getByRole('region', { name: 'Cautions' })).toContainText('small holes')
  await openForm(page, 'Release')
  await page.getByLabel('What you checked and found').fill('frozen for a week, no weevils')
  let letAnswer = () => {}
  const held = new Promise<void>((resolve) => {
    letAnswer = resolve
  })
  await page.route('**/call', async (route) => {
    if (route.request().postData()?.includes('lot.release')) await held
    await route.continue()
  })
  await page.getByRole('button', { name: 'Release it' }).click()
  const move = page.getByRole('article').getByRole('button', { name: 'Move', exact: true })
  await move.focus()
  letAnswer()
  await expect(page.getByRole('form', { name: 'Release from quarantine' })).toHaveCount(0)
  await expect(page.getByRole('region', { name: 'Cautions' })).toHaveCount(0)
  await expect(move).toBeFocused()
  expect((await app.call('lot.get', { lotId: shelf.bean.lotId })).quarantined).toBe(false)
})

test('a button pressed while the next card is on its way opens its form on that card', {
  tag: '@long',
}, async ({ page }) => {
  const card = (lot: Lot) => page.getByRole('article', { name: lot.lotNumber })
  await expect(card(shelf.bean)).toBeVisible()
  const answer = Promise.withResolvers<void>()
  await page.route('**/call', async (route) => {
    const { operation } = route.request().postDataJSON() as { operation: string }
    if (operation === 'lot.get') await answer.promise
    await route.continue()
  })
  await page.getByRole('grid').getByText(shelf.tomato.lotNumber).click()
  await openForm(page, 'Move')
  await expect(card(shelf.bean)).toBeVisible()
  await expect(page.getByRole('article').locator('form')).toHaveCount(0)
  answer.resolve()
  await expect(card(shelf.tomato).locator('form')).toBeVisible()
  await openForm(page, 'Split')
  await page.getByRole('grid').getByText(shelf.bean.lotNumber).click()
  await expect(card(shelf.bean)).toBeVisible()
  await page.getByRole('grid').getByText(shelf.tomato.lotNumber).click()
  await expect(card(shelf.tomato)).toBeVisible()
  await expect(page.getByRole('article').locator('form')).toHaveCount(0)
})

test('another record of the same variety is found by its letters, joined, and parted again', {
  tag: '@long',
}, async ({ app, page }) => {
  const gift = { variety: { newVariety: { cropId: 'bean', name: 'Climber of the Lane' } }, amount: '20 g' }
  await app.call('intake.record', { donor: null, receivedOn: shelf.today, gifts: [gift] })
  await openForm(page, 'Same variety')
  const form = page.getByRole('form', { name: /^Another record of Hrášek/ })
  await form.getByRole('combobox').fill('climb')
  await form.getByRole('combobox').press('Enter')
  await expect(form.getByRole('status').filter({ hasText: 'becomes another name' })).toContainText(
    'with its one accession',
  )
  await form.getByRole('button', { name: /^Join, and call both/ }).press('Enter')
  await expect(footLine(page)).toContainText('Joined the variety Climber of the Lane')
  const named = async () => (await app.call('lot.list', {})).rows.map(({ variety }) => variety)
  expect(await named()).not.toContain('Climber of the Lane')
  await page.getByRole('contentinfo').getByRole('button', { name: 'undo' }).click()
  await expect(footLine(page)).toContainText('Undone')
  expect(await named()).toContain('Climber of the Lane')
})

test('every form of the card is without barrier', { tag: '@long' }, async ({ page }) => {
  test.slow()
  const actions = page.getByRole('region', { name: 'What to do with it' }).getByRole('button')
  await page.getByRole('article').getByText('More', { exact: true }).click()
  await expect(actions.last()).toBeVisible()
  for (const action of await actions.all()) {
    await action.click()
    await expect(page.getByRole('article').locator('form')).toBeVisible()
    await expectNoBarrier(page, 'article')
  }
})
