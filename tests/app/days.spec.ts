import { Keys } from './support/keys.ts'
import { open } from './support/open.ts'
import { smallShelf } from './support/small-shelf.ts'
import { expect, test } from './support/test.ts'

test.use({ drawer: 'shelf' })

test('a day is read as it is typed, written as the library writes it, and refused where it is none', async ({
  app,
  page,
}) => {
  const { bean } = smallShelf()
  await open(page, `/shelf/lot/${bean.lotId}`)
  await page.getByRole('button', { name: 'Take stock' }).press('Enter')
  const keys = new Keys(page)
  await page.getByLabel(/^Found/).fill('290 seeds')
  const on = page.getByRole('textbox', { name: 'On' })
  await on.fill('')
  await expect(on).toHaveValue('')
  await keys.type('3 m')
  await expect(page.getByRole('article')).toContainText('Not a day yet. Type it such as')
  await page.keyboard.press('Control+Enter')
  await expect(on).toHaveValue('3 m')
  await on.fill('2 Jan 2024')
  await keys.press('ArrowUp')
  await expect(on).toHaveValue('3 Jan 2024')
  await keys.press('ArrowDown')
  await on.blur()
  await on.focus()
  await keys.type('2.1.24')
  await on.blur()
  await expect(on).toHaveValue('2 Jan 2024')
  const { quantity } = await app.call('lot.get', { lotId: bean.lotId })
  expect(quantity.count, 'nothing was written of a day that is none').toBe(300)
})
