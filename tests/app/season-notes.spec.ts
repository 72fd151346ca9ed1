import { expectNoBarrier } from './support/axe.ts'
import { Keys } from './support/keys.ts'
import { open } from './support/open.ts'
import { shown } from './support/shown.ts'
import { expect, test } from './support/test.ts'

test.use({ drawer: 'empty' })

test('notes a season by keyboard, undoes a note, and takes the harvest in with its parents and plants', {
  tag: '@long',
}, async ({ app, page }) => {
  const { today } = await app.call('collection.get', {})
  const { personId } = await app.call('person.create', { name: 'Tamsin Lugg', roles: ['grower'] })
  const { taken } = await app.call('intake.record', {
    donor: null,
    receivedOn: today,
    gifts: [
      { variety: { newVariety: { cropId: 'bean', name: 'Harbour Pole' } }, amount: '60 seeds' },
      { variety: { newVariety: { cropId: 'pea', name: 'Mill Tall' } }, amount: '60 seeds' },
    ],
  })
  const { siteId } = await app.call('site.change', {
    name: 'Near bed',
    growerId: personId,
    areaM2: 20,
    mostVarieties: 2,
  })
  await app.call('season-plan.create', { choices: taken.map(({ accessionId }) => ({ accessionId, siteId })) })
  const { growOuts } = await app.call('grow-out.list', {})
  for (const [index, lot] of taken.entries()) {
    await app.call('withdrawal.record', {
      person: { personId },
      on: today,
      purpose: 'grow-out',
      lines: [{ lotId: lot.lotId, amount: '20 seeds' }],
      growOutId: growOuts[index]?.growOutId ?? null,
    })
  }

  await open(page, '/regrow/season')
  const keys = new Keys(page)
  const heading = (name: string) => page.getByRole('heading', { level: 2, name })
  const noted = page.getByRole('region', { name: 'What was noted' }).getByRole('listitem')
  await expect(heading('Harbour Pole')).toBeVisible()
  await expectNoBarrier(page)

  await page.getByRole('button', { name: 'Sown', exact: true }).press('Enter')
  await expect(page.getByRole('textbox', { name: 'Note' })).toBeFocused()
  await keys.type('in trays')
  await keys.press('Enter')
  await expect(noted.filter({ hasText: 'in trays' })).toHaveCount(1)
  await expect(page.getByRole('heading', { name: 'What to note' })).toBeFocused()
  await page.getByRole('button', { name: /Undo this entry.*Sown/ }).press('Enter')
  await expect(noted.filter({ hasText: 'in trays' })).toHaveCount(0)

  await page.getByRole('button', { name: 'Seed saved', exact: true }).press('Enter')
  await expect(page.getByLabel('Plants that seed was saved from')).toBeFocused()
  await keys.type('12')
  await keys.press('Enter')
  await expect(noted.filter({ hasText: '12 counted' })).toHaveCount(1)
  await page.getByRole('button', { name: 'Take its seed back' }).press('Enter')
  await expect(page.getByLabel('Amount')).toBeFocused()
  await expect(page.getByLabel('Plants that seed was saved from')).toHaveValue('12')
  await keys.type('400 seeds')
  await keys.press('Enter')
  await expect(noted.filter({ hasText: 'came back' })).toHaveCount(1)
  await expect(shown(page, 'seed came back').first()).toBeVisible()
  const harvested = (await app.call('grow-out.list', {})).growOuts[0]?.back[0]
  const lot = await app.call('lot.get', { lotId: harvested?.lotId ?? 0 })
  expect(lot).toMatchObject({ generation: 1, grownAt: 'Near bed', parents: [{ lotId: taken[0]?.lotId }] })

  await page.getByRole('link', { name: 'Harbour Pole' }).press('ArrowDown')
  await expect(page.getByRole('link', { name: 'Mill Tall' })).toBeFocused()
  await keys.press('Enter')
  await expect(heading('Mill Tall')).toBeFocused()
  await page.getByRole('button', { name: 'Failed', exact: true }).press('Enter')
  await expect(page.getByLabel('Why')).toBeFocused()
  await keys.type('slugs')
  await keys.press('Enter')
  await expect(noted.filter({ hasText: 'slugs' })).toHaveCount(1)
  const { needs } = await app.call('regeneration.list', { text: 'mill' })
  expect(needs[0]?.growOut).toMatchObject({ failed: true })
  await expectNoBarrier(page)
})
