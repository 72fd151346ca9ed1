import { expectNoBarrier } from './support/axe.ts'
import { open } from './support/open.ts'
import { shown } from './support/shown.ts'
import { atTheTable, envelopes, field } from './support/take-in-table.ts'
import { expect, test } from './support/test.ts'

test.use({ drawer: 'empty' })

test('seed of a crop that the table has not is taken in by keyboard, and the crop corrected in the settings', {
  tag: '@long',
}, async ({ app, page }) => {
  const keys = await atTheTable(page)
  await keys.press('Enter', 'Enter')
  await expect(field(page, 'Variety')).toBeFocused()
  await keys.type('Ferry Flame')
  await keys.press('Enter')
  await expect(field(page, 'Its crop')).toBeFocused()
  await keys.type('lantern vine')
  const adding = page.getByRole('option', { name: 'Add lantern vine as a crop of your own' })
  await expect(adding).toHaveAttribute('aria-selected', 'false')
  await keys.press('Enter')
  await expect(page.getByText('No crop is known as ‘lantern vine’.')).toBeVisible()
  await keys.press('ArrowDown')
  await expect(adding).toHaveAttribute('aria-selected', 'true')
  await keys.press('Enter')
  await expect(field(page, 'Harvest year')).toBeFocused()
  await expect(shown(page, 'A crop of your own: it is added')).toBeVisible()
  await keys.press('Enter')
  await expect(field(page, 'Amount')).toBeFocused()
  await keys.type('2 g')
  await keys.press('Enter')
  await expect(field(page, 'Counted sample')).toBeFocused()
  await keys.press('Enter')
  await expect(envelopes(page)).toContainText('lantern vine, new crop')
  await expectNoBarrier(page)
  await keys.press('Control+Enter')
  await expect(page.getByRole('heading', { name: 'Taken in: one gift from somebody unknown' })).toBeVisible()
  await expect(page.getByRole('region', { name: 'Taken in' })).toContainText(
    '2 g, how many seeds is not known',
  )
  await expect(page.getByRole('region', { name: 'Taken in' })).toContainText(
    'Nobody has said how much lantern vine seed weighs',
  )

  await open(page, '/settings')
  await page.getByRole('button', { name: 'lantern vine' }).press('Enter')
  await expect(field(page, 'Everyday name')).toBeFocused()
  await field(page, 'What a hundred weigh, grams').focus()
  await keys.type('0.04')
  await expectNoBarrier(page)
  await keys.press('Enter')
  await expect(page.getByRole('contentinfo')).toContainText('Corrected lantern vine: hundred-seed weight')
  const { rows } = await app.call('lot.list', {})
  expect(rows.map(({ crop, quantity }) => [crop, quantity.count])).toEqual([['lantern vine', 5_000]])

  await field(page, 'It lives').selectOption({ label: 'two seasons, and flowers in the second' })
  await field(page, 'Square metres of bed for one plant').focus()
  await keys.type('0.5')
  await field(page, 'Constant of ageing KE').focus()
  await keys.type('8.5')
  await expect(shown(page, 'The four belong together: type this one too, or none of them.')).toHaveCount(3)
  for (const [label, typed] of [
    ['CW', '4.8'],
    ['CH', '0.0329'],
    ['CQ', '0.000478'],
  ] as const) {
    await field(page, `Constant of ageing ${label}`).focus()
    await keys.type(typed)
  }
  await expectNoBarrier(page)
  await keys.press('Enter')
  await expect(page.getByRole('contentinfo')).toContainText(
    'Corrected lantern vine: how long it lives, bed for one plant and constants of ageing',
  )

  await field(page, 'Plants for one regrowing').focus()
  await keys.type('33')
  await field(page, 'Days without frost to ripe seed').focus()
  await keys.type('150')
  await field(page, 'Why').focus()
  await keys.type('sets little seed')
  await keys.press('Enter')
  await expect(page.getByRole('contentinfo')).toContainText('Changed what to keep of lantern vine')
  const [{ cropId = '' } = {}] = (await app.call('crop.list', {})).crops.filter(({ own }) => own)
  expect(await app.call('crop.get', { cropId })).toMatchObject({
    plantsToKeep: 33,
    daysToSeed: 150,
    lifeCycle: 'biennial',
    bedArea: 0.5,
    viabilityConstants: { ke: 8.5, cw: 4.8, ch: 0.0329, cq: 0.000478 },
  })
})
