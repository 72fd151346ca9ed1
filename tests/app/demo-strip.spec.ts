import { expectNoBarrier } from './support/axe.ts'
import { shown } from './support/shown.ts'
import { expect, test } from './support/test.ts'

test('the demo says that it is one, and an own collection is one click away', { tag: '@long' }, async ({
  app,
  page,
}) => {
  await expect(shown(page, 'This is the demo collection. Nothing here is real.')).toBeVisible()
  await page.getByRole('button', { name: 'Start my own collection' }).click()
  const name = page.getByLabel('The name of your library')
  await expect(name).toBeFocused()
  await expectNoBarrier(page)
  await name.press('Enter')
  await expect(page.getByRole('alert')).toContainText('Type something here')
  await name.fill('Hollow Lane Library')
  await name.press('Enter')
  await expect(shown(page, 'This is the demo collection.')).toHaveCount(0)
  await expect(page.getByRole('contentinfo')).toContainText('Hollow Lane Library')
  const about = await app.call('collection.get', {})
  expect(about).toMatchObject({ kind: 'own', accessions: 0, lots: 0 })
  await page.getByRole('link', { name: 'Shelf', exact: true }).click()
  await expect(shown(page, 'The shelf is empty.')).toBeVisible()
})
