import { expectNoBarrier } from './support/axe.ts'
import { Keys } from './support/keys.ts'
import { open } from './support/open.ts'
import { shown } from './support/shown.ts'
import { expect, test } from './support/test.ts'

test.use({ drawer: 'shelf' })

test('a place is read by keyboard, told what it is for, and judged by it; a logger file follows', {
  tag: '@long',
}, async ({ page }) => {
  const keys = new Keys(page)
  await open(page, '/storage/new')
  await expect(page.getByLabel('Its name')).toBeFocused()
  await keys.type('Cellar')
  await keys.press('Enter')
  const card = page.getByRole('article', { name: 'Cellar' })
  await expect(card.getByRole('heading', { level: 2 })).toBeFocused()
  await expect(card).toContainText('no readings yet')
  await card.getByRole('button', { name: 'Add a reading' }).press('Enter')
  await expect(card.getByLabel('Temperature', { exact: true })).toBeFocused()
  await keys.type('24,5')
  await keys.press('Tab', 'Tab')
  await expect(card.getByLabel('Humidity, %')).toBeFocused()
  await keys.type('62')
  await keys.press('Enter')
  await expect(card.getByRole('img', { name: /^Climate by day\. 24\.5 °C on average/ })).toBeVisible()
  await expect(card).toContainText('readings, but no limits set yet')
  await card.getByRole('button', { name: 'What it is meant for' }).press('Enter')
  await expect(card.getByLabel('Meant for keeping seed')).toBeFocused()
  await card.getByRole('button', { name: 'Save' }).press('Enter')
  await expect(card).toContainText('too warm and too damp')
  await card.getByRole('button', { name: 'Read in a logger’s file' }).press('Enter')
  const hot = Array.from(
    { length: 30 },
    (_, hour) =>
      `${16 + Math.floor(hour / 24)}.03.2026 ${String(hour % 24).padStart(2, '0')}:00;31,0;70,0;7,0\n`,
  )
  const text =
    'Zeit;Temperatur °C;Feuchte %;außen °C\n14.03.2026 08:30;18,5;42,0;7,5\n14.03.2026 09:30;18,6;42,0;7,1\nbattery;;;\n' +
    hot.join('')
  await card
    .getByLabel('The file, as the logger’s program saved it (CSV)')
    .setInputFiles({ name: 'cellar.csv', mimeType: 'text/csv', buffer: Buffer.from(text) })
  await expect(card).toContainText('Row 4: no date and time can be read from ‘battery’')
  await expect(card).toContainText('Temperature: ‘Temperatur °C’, in °C.')
  const column = card.getByLabel('Temperature is')
  await column.selectOption('‘außen °C’')
  await expect(card).toContainText('Temperature: ‘außen °C’, in °C.')
  await column.selectOption('as found')
  await expect(card).toContainText('Temperature: ‘Temperatur °C’, in °C.')
  await expectNoBarrier(page)
  await card.getByLabel('leave the 1 row out').press('Space')
  await card.getByRole('button', { name: 'Read in 32 readings' }).press('Enter')
  await expect(page.getByRole('contentinfo').getByRole('status')).toContainText(
    'Read in 32 readings of Cellar from cellar.csv, one row left out',
  )
  await card.getByLabel('Time shown').selectOption('all of it')
  await card
    .getByRole('listitem')
    .filter({ hasText: 'up to 31.0 °C and 70 %' })
    .getByRole('button')
    .press('Enter')
  await expect(card).toContainText('None of the lots that are there now was there then.')
  await card.getByRole('button', { name: 'What kind of place it is' }).press('Enter')
  await card.getByLabel('Kind of place', { exact: true }).selectOption('a fridge')
  await expect(card).toContainText('The readings of Cellar still count: no forecast changes.')
  await card.getByRole('button', { name: 'Change it' }).press('Enter')
  await expect(page.getByRole('contentinfo').getByRole('status')).toContainText('Cellar is a fridge now')
})

test('moisture and container go on the lot’s card, and a freezer is warned of before the move', {
  tag: '@long',
}, async ({ app, page }) => {
  await app.call('place.create', { name: 'Chest', kind: 'freezer' })
  const { rows } = await app.call('lot.list', {})
  await open(page, `/shelf/lot/${rows[0]?.lotId ?? 0}`)
  const card = page.getByRole('article')
  await card.getByText('More', { exact: true }).press('Enter')
  await card.getByRole('button', { name: 'Moisture' }).press('Enter')
  const form = card.getByRole('form', { name: 'How moist it is' })
  await form.getByLabel('Found by').selectOption('break-check')
  await form.getByLabel('It', { exact: true }).selectOption('bends')
  await expect(form).toContainText(
    'between 8 and 13 %, as it bends or flattens in the hand. Do not close it in',
  )
  await form.getByRole('button', { name: 'Save' }).press('Enter')
  await card.getByRole('button', { name: 'Dry it' }).press('Enter')
  const drying = card.getByRole('form', { name: 'Dry it' })
  await drying.getByLabel('The seed weighs, grams').fill('450')
  await drying.getByLabel('Moisture now, %').fill('13')
  await expect(drying).toContainText('Stop when the seed weighs 421 g')
  await drying.getByRole('button', { name: 'Done' }).press('Enter')
  const storage = card.getByRole('region', { name: 'Storage' })
  await expect(storage).toContainText('between 8 and 13 % (bends or flattens in the hand)')
  await card.getByRole('button', { name: 'Move', exact: true }).press('Enter')
  await card.getByRole('form', { name: 'Move' }).getByLabel('To').selectOption({ label: 'Chest' })
  await expect(card).toContainText('Too moist to freeze: it may hold up to 13 % water')
})

test('a round is ticked by keyboard, outlives the window, and puts a lot into quarantine', {
  tag: '@long',
}, async ({ app, page }) => {
  const { placeId } = await app.call('place.create', { name: 'Cellar', kind: 'room' })
  await app.call('place.change-terms', { placeId, aim: 'short-term', roundDays: 30 })
  const { rows } = await app.call('lot.list', {})
  const [lot] = rows
  if (lot === undefined) throw new Error('The shelf is empty')
  const { today } = await app.call('collection.get', {})
  await app.call('lot.move', { lotIds: [lot.lotId], placeId, on: today })
  const keys = new Keys(page)
  await open(page, '/storage')
  await page.getByRole('link', { name: 'Round: 1 due' }).press('Enter')
  const pests = page.getByRole('group', { name: /^Pests/ })
  await pests.getByLabel('fine').focus()
  await keys.press('ArrowRight')
  await expect(pests.getByLabel('found something')).toBeChecked()
  await keys.press('Enter')
  const note = page.getByLabel('What was found: pests')
  await expect(note).toBeFocused()
  await keys.type('weevils')
  await page.getByRole('checkbox', { name: new RegExp(lot.lotNumber) }).press('Space')
  await page.getByLabel('put those lots into quarantine').press('Space')
  await expect(shown(page, '1 of 1 place.')).toBeVisible()
  await expectNoBarrier(page)
  await page.reload()
  await expect(note).toHaveValue('weevils')
  await note.press('Control+Enter')
  await expect(page.getByRole('contentinfo').getByRole('status')).toContainText(
    'Checked 1 place; pests in Cellar; 1 lot in quarantine',
  )
  await expect(page.getByRole('region', { name: 'Earlier rounds' })).toContainText('Pests in Cellar: weevils')
  await expect(page.getByRole('link', { name: 'Round', exact: true })).toBeVisible()
  expect((await app.call('lot.get', { lotId: lot.lotId })).quarantineReason).toContain('weevils')
})
