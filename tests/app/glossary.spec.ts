import { expectNoBarrier } from './support/axe.ts'
import { press, scan, type } from './support/keys.ts'
import { smallShelf } from './support/small-shelf.ts'
import { expect, test } from './support/test.ts'

test.use({ drawer: 'shelf' })

test('the key ? explains the words of the trade, and Escape goes back to where the keeper was', async ({
  page,
}) => {
  const words = page.getByRole('dialog', { name: 'The words of the trade' })
  const find = words.getByRole('textbox', { name: 'Find a word' })
  const here = page.getByRole('link', { name: 'Germination' })
  await expect(page.getByRole('row', { name: /Widow Tarn/ })).toBeVisible()
  await here.focus()
  await press(page, '?')
  await expect(find).toBeFocused()
  await type(page, 'humed')
  await expect(words.getByRole('status')).toContainText('‘humed’')
  await press(page, 'Control+A')
  await type(page, 'abnormal?')
  await expect(find).toHaveValue('abnormal?')
  await expect(words.getByRole('definition').first()).toHaveText('a sprout that cannot become a plant')
  await expectNoBarrier(page, '.glossary')
  await press(page, 'Tab', 'Tab')
  await expect(words.getByRole('region')).toBeFocused()
  await press(page, 'Escape')
  await expect(words).toBeHidden()
  await expect(here).toBeFocused()

  // In a field it is a letter like any other; the button is for the mouse.
  const field = page.getByRole('combobox', { name: /Find a lot/ })
  await field.focus()
  await press(page, '?')
  await expect(field).toHaveValue('?')
  await page.getByRole('button', { name: 'Words explained' }).click()
  await expect(find).toBeFocused()

  // A label reader goes to its lot all the same, also where it types ? for a letter, as under a French keyboard.
  const { bean, tomato } = smallShelf()
  await scan(page, bean.scanCode)
  await expect(page.getByRole('heading', { name: 'Hrášek’s Climber' })).toBeVisible()
  await expect(words).toBeHidden()
  await here.focus()
  const last = tomato.scanCode.at(-1)
  await scan(page, tomato.scanCode, { stands: (letter) => (letter === last ? '?' : letter) })
  await expect(page.getByRole('heading', { name: /Widow Tarn/ })).toBeVisible()
  await expect(words).toBeHidden()
})
