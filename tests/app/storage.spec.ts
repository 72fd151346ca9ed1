import { expectNoBarrier } from './support/axe.ts'
import { Keys } from './support/keys.ts'
import { open } from './support/open.ts'
import { fillSmallShelf } from './support/small-shelf.ts'
import { expect, test } from './support/test.ts'

test.use({ drawer: 'empty' })

test('a place is read by keyboard, told what it is for, and judged by it; a logger file follows', async ({
  app,
  page,
}) => {
  await fillSmallShelf(app)
  const { placeId } = await app.call('place.create', { name: 'Cellar', kind: 'room' })
  const keys = new Keys(page)
  await open(page, `/storage/place/${placeId}`)
  const card = page.getByRole('article', { name: 'Cellar' })
  await expect(card).toContainText('no readings yet')
  await card.getByRole('button', { name: 'Write a reading down' }).press('Enter')
  await expect(card.getByLabel('Temperature', { exact: true })).toBeFocused()
  await keys.type('24,5')
  await keys.press('Tab', 'Tab')
  await expect(card.getByLabel('Humidity, %')).toBeFocused()
  await keys.type('62')
  await keys.press('Enter')
  await expect(card.getByRole('img', { name: /^Climate by day\. 24\.5 °C on average/ })).toBeVisible()
  await expect(card).toContainText('readings, but nothing to keep to yet')
  await card.getByRole('button', { name: 'What it is meant for' }).press('Enter')
  await expect(card.getByLabel('Meant for keeping seed')).toBeFocused()
  await card.getByRole('button', { name: 'Keep that' }).press('Enter')
  await expect(card).toContainText('too warm and too damp')
  await card.getByRole('button', { name: 'Take a logger’s file in' }).press('Enter')
  const text =
    'Zeit;Temperatur °C;Feuchte %\n14.03.2026 08:30;18,5;42,0\n14.03.2026 09:30;18,6;42,0\nbattery;;\n'
  await card
    .getByLabel('The file, as the logger’s program saved it (CSV)')
    .setInputFiles({ name: 'cellar.csv', mimeType: 'text/csv', buffer: Buffer.from(text) })
  await expect(card).toContainText('Row 4: no date and time can be read from ‘battery’')
  await expect(card).toContainText('Temperature: ‘Temperatur °C’, in °C.')
  await expectNoBarrier(page)
  await card.getByLabel('leave the 1 row out').press('Space')
  await card.getByRole('button', { name: 'Take 2 readings in' }).press('Enter')
  await expect(page.getByRole('contentinfo').getByRole('status')).toContainText(
    'Took in 2 readings of Cellar from cellar.csv, one row left out',
  )
})
