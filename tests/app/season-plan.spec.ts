import type { Page } from '@playwright/test'
import { expectNoBarrier } from './support/axe.ts'
import { open } from './support/open.ts'
import { shown } from './support/shown.ts'
import { expect, test } from './support/test.ts'

test.use({ drawer: 'empty' })

const garden = (page: Page, name: string) => page.getByRole('region', { name, exact: true })

test('plans two varieties that cross, says what clashes when one is moved, saves, and hands out the seed', {
  tag: '@long',
}, async ({ app, page }) => {
  const { today } = await app.call('collection.get', {})
  const { personId } = await app.call('person.create', { name: 'Tamsin Lugg', roles: ['grower'] })
  await app.call('intake.record', {
    donor: null,
    receivedOn: today,
    gifts: [
      { variety: { newVariety: { cropId: 'beet', name: 'Quay Red' } }, amount: '60 clusters' },
      { variety: { newVariety: { cropId: 'chard', name: 'Ferry Silver' } }, amount: '60 clusters' },
    ],
  })
  const at = (eastM: number) => ({ place: { eastM, northM: 0 }, areaM2: 20, mostVarieties: 2 })
  await app.call('site.change', { name: 'Near bed', growerId: personId, ...at(0) })
  await app.call('site.change', { name: 'Far bed', growerId: personId, ...at(900) })

  await open(page, '/regrow/plan')
  await page.getByRole('button', { name: 'Make a plan' }).press('Enter')
  await expect(shown(page, 'The best plan there is')).toBeVisible({ timeout: 20_000 })
  await expect(garden(page, 'Near bed').getByRole('listitem')).toHaveCount(1)
  await expect(garden(page, 'Far bed').getByRole('listitem')).toHaveCount(1)
  await expectNoBarrier(page)

  await page.getByLabel('Garden of Quay Red').selectOption({ label: 'Near bed' })
  await page.getByLabel('Garden of Ferry Silver').selectOption({ label: 'Near bed' })
  await expect(page.getByRole('alert')).toContainText('Quay Red and Ferry Silver cross: both at Near bed')
  await expect(page.getByRole('button', { name: 'Save this plan' })).toBeDisabled()
  const way = page.getByLabel('How Ferry Silver is kept apart')
  await expect(way.getByRole('option')).toHaveText(['by distance', 'under a cover'])
  await way.selectOption('under a cover')
  await expect(page.getByRole('alert')).toBeHidden()
  await expect(garden(page, 'Near bed')).toContainText('covered · about 6 hours of work')
  await way.selectOption('by distance')
  await page.getByLabel('Garden of Ferry Silver').selectOption({ label: 'Far bed' })
  await expect(garden(page, 'Far bed').getByRole('listitem')).toHaveCount(1)
  await expect(page.getByRole('alert')).toBeHidden()
  await page.reload()
  await expect(page.getByRole('button', { name: 'Save this plan' })).toBeEnabled()
  await expect(garden(page, 'Far bed')).toContainText('Ferry Silver')

  await page.getByRole('button', { name: 'Save this plan' }).press('Enter')
  await expect(page.getByRole('button', { name: 'This plan is saved' })).toBeVisible()
  await garden(page, 'Far bed')
    .getByRole('button', { name: /^Hand \d+ of .* to Tamsin Lugg/ })
    .press('Enter')
  await expect(garden(page, 'Far bed')).toContainText(/\d+ clusters went out to be grown/)
  await expectNoBarrier(page)
})

test('adds a garden by keyboard', { tag: '@long' }, async ({ app, page }) => {
  await open(page, '/regrow/plan')
  await expect(shown(page, 'There is no garden yet.')).toBeVisible()
  await page.getByRole('button', { name: 'Add a garden' }).press('Enter')
  await expect(page.getByLabel('Its name')).toBeFocused()
  await page.getByLabel('Its name').fill('Allotment 12')
  await page.getByLabel('Free bed, m²').fill('24')
  await page.getByLabel('Varieties at most').fill('3')
  await page.getByLabel('Days without frost').fill('120')
  await page.getByLabel('Where it is').selectOption('sketch')
  await page.getByLabel('Metres east').fill('-120')
  await page.getByLabel('Metres north').fill('40')
  const takes = page.getByRole('combobox', { name: 'Crops that the grower will grow' })
  await takes.fill('beet')
  await takes.press('Enter')
  await expect(page.getByRole('button', { name: /^take out.*Beet$/ })).toBeVisible()
  const near = page.getByRole('combobox', { name: 'What flowers nearby' })
  for (const [letters, crop, metres] of [
    ['chard', 'Swiss chard', '150'],
    ['radish', 'Radish', '80'],
    ['carrot', 'Carrot', '30'],
  ] as const) {
    await near.fill(letters)
    await near.press('Enter')
    await page.getByLabel(`How far away ${crop} is, m`).fill(metres)
  }
  await page.getByRole('button', { name: /^take out.*Carrot$/ }).press('Enter')
  await expect(page.getByRole('button', { name: /^take out.*Radish$/ })).toBeFocused()
  await expect(page.getByLabel('How far away Carrot is, m')).toHaveCount(0)
  await page.getByLabel('Metres north').press('Enter')
  await expect(garden(page, 'Allotment 12')).toContainText('0 of 24 m²')
  await expect(garden(page, 'Allotment 12')).toContainText('120 days without frost')
  const { sites } = await app.call('site.list', {})
  expect(sites).toMatchObject([
    {
      place: { eastM: -120, northM: 40 },
      mostVarieties: 3,
      seasonDays: 120,
      takes: ['beet'],
      neighbours: [
        { cropId: 'radish', metres: 80 },
        { cropId: 'chard', metres: 150 },
      ],
    },
  ])
})
