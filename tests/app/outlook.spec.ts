import { expectNoBarrier } from './support/axe.ts'
import { open } from './support/open.ts'
import { type SmallShelf, smallShelf } from './support/small-shelf.ts'
import { expect, test } from './support/test.ts'

test.use({ drawer: 'shelf' })

let shelf: SmallShelf
test.beforeEach(async ({ page }) => {
  shelf = smallShelf()
  await open(page, `/shelf/lot/${shelf.bean.lotId}`)
})

test('a bad test bends the curve, names the day and turns the flag', { tag: '@long' }, async ({
  app,
  page,
}) => {
  const outlook = page.getByRole('region', { name: 'Will it still sprout' })
  const curve = outlook.getByRole('img')
  await expect(outlook).toContainText('Not tested yet')
  await expect(curve).toHaveAccessibleName(/alive, between .* No tests\.$/)
  await expect(page.getByRole('region', { name: 'How it stands' })).not.toContainText('Weak')
  await page.getByRole('button', { name: 'Enter germination' }).click()
  await page.getByLabel('seeds laid out', { exact: true }).fill('50')
  await page.getByLabel('of them sprouted').fill('20')
  await page.getByRole('button', { name: 'Save the result' }).click()
  await expect(outlook).toContainText('It is based on one test of the lot.')
  await expect(outlook).toContainText(/It is almost surely below \d+.% already/)
  await expect(curve).toHaveAccessibleName(/20 of 50 sprouted\.$/)
  await expect(page.getByRole('region', { name: 'How it stands' })).toContainText('Weak')
  await outlook.getByText('Would it last longer elsewhere?').click()
  await expect(outlook.getByRole('row', { name: /^where it is now/ })).toContainText('below it already')
  await app.call('forecast.pause', { held: true })
  const foot = page.getByRole('contentinfo')
  await expect(foot).toContainText('3 of 3 forecasts worked out, stopped')
  await expectNoBarrier(page)
  await foot.getByRole('button', { name: 'go on' }).press('Enter')
  await expect(foot).not.toContainText('forecasts worked out')
  expect(await app.call('forecast.get-progress', {})).toMatchObject({ left: 0, held: false })
  await page.emulateMedia({ media: 'print', colorScheme: 'dark' })
  await expect(page.getByRole('banner').or(page.getByRole('contentinfo'))).toHaveCount(0)
  await expect(page.getByRole('button', { name: 'Move', exact: true })).toHaveCount(0)
  await expect(curve).toBeVisible()
})
