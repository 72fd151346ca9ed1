import type { Page } from '@playwright/test'
import { expectNoBarrier } from './support/axe.ts'
import { press, scan, type } from './support/keys.ts'
import { open } from './support/open.ts'
import type { RunningApp } from './support/running-app.ts'
import { shown } from './support/shown.ts'
import { LONG_NAME, type SmallShelf, smallShelf } from './support/small-shelf.ts'
import { expect, test } from './support/test.ts'

test.use({ drawer: 'shelf' })

let shelf: SmallShelf

/** A member who took beans with a promise that is overdue, and maize without one. */
async function aMemberWithSeedOut(app: RunningApp) {
  await app.call('settings.change', { settings: { dueDates: true } })
  const { personId } = await app.call('person.create', {
    name: 'Maren Holt',
    town: 'Quillhaven',
    email: 'maren@example.org',
    mayWrite: true,
  })
  const { bean } = shelf
  const { withdrawalId } = await app.call('withdrawal.record', {
    person: { personId },
    on: '2026-01-04',
    itIsSo: ['2026-01-04'],
    lines: [{ lotId: bean.lotId, amount: '20 seeds' }],
    promised: 'a handful',
    promisedBy: '2026-02-01',
  })
  return { personId, withdrawalId }
}

test.beforeEach(() => {
  shelf = smallShelf()
})

const field = (page: Page, name: string | RegExp) => page.getByRole('combobox', { name })
test('takes back from what a member has out, keeps the promise, and opens it again by undo', {
  tag: '@long',
}, async ({ app, page }) => {
  const { personId } = await aMemberWithSeedOut(app)
  await open(page, '/take-back')
  await expect(shown(page, 'One visit that seed may come back from, 1 overdue')).toBeVisible()
  await expect(field(page, 'Who brings it?')).toBeFocused()
  await type(page, 'mar')
  await expect(page.getByRole('option', { name: /Maren Holt/ })).toBeVisible()
  await press(page, 'Enter')
  await expect(page.getByRole('listbox', { name: 'What Maren Holt has out' })).toBeFocused()
  await expectNoBarrier(page)
  await page.getByRole('listbox', { name: 'What Maren Holt has out' }).focus()
  await press(page, 'Enter')
  await expect(page.getByLabel('Harvest year')).toBeFocused()
  await expect(page.getByLabel('This is what they hoped to bring back: a handful')).toBeChecked()
  await type(page, '2025')
  await press(page, 'Enter')
  await type(page, '120 seeds')
  await press(page, 'Enter', 'Enter')
  await type(page, '14')
  await press(page, 'Enter')
  await expect(page.getByLabel('Anything unlike the rest, sick or wet?')).toBeFocused()
  await press(page, 'Enter')
  await type(page, 'Behind the ferry house')
  await expectNoBarrier(page)
  await press(page, 'Control+Enter')
  await expect(shown(page, 'HL26-0001-B', { exact: true })).toBeVisible()
  await expect(shown(page, 'Came back as hoped: a handful')).toBeVisible()
  await expect(shown(page, /Nobody has named seed to bring back/)).toBeVisible()
  await expectNoBarrier(page)

  const { visits } = await app.call('withdrawal.list-open', { personId })
  expect(visits[0]?.promise?.state).toBe('met')
  const lotId = visits[0]?.back[0]?.lotId ?? 0
  const lot = await app.call('lot.get', { lotId })
  expect([lot.generation, lot.grower, lot.grownAt, lot.harvest]).toEqual([
    1,
    'Maren Holt',
    'Behind the ferry house',
    '2025',
  ])
  await page.getByRole('button', { name: /undo/i }).focus()
  await press(page, 'Enter')
  await expect(shown(page, 'One visit that seed may come back from, 1 overdue')).toBeVisible()
})

test('takes several lots back from a new person, from nothing, and makes them once', {
  tag: '@long',
}, async ({ app, page }) => {
  await open(page, '/take-back')
  await expect(field(page, 'Who brings it?')).toBeFocused()
  await type(page, 'Teodor Ash')
  await expect(page.getByRole('option', { name: /is new here/ })).toBeVisible()
  await press(page, 'Enter')
  await expect(page.getByLabel('Town')).toBeFocused()
  await press(page, 'Enter', 'Enter', 'Enter')
  for (const letters of ['widow', 'hrasek']) {
    await expect(field(page, 'Grown from')).toBeFocused()
    await type(page, letters)
    await expect(page.getByRole('option').first()).toBeVisible()
    await press(page, 'Enter')
    await expect(page.getByLabel('Harvest year')).toBeFocused()
    await press(page, 'Enter')
    await type(page, '40 seeds')
    await press(page, 'Enter', 'Enter', 'Enter', 'Enter', 'Enter', 'Enter')
    await expect(page.getByRole('button', { name: 'Take it back' })).toBeFocused()
    await press(page, 'Enter')
    await expect(shown(page, /grown by Teodor Ash/).first()).toBeVisible()
  }
  await expect(page.getByRole('button', { name: /print label/ })).toHaveCount(2)
  const { people } = await app.call('person.list', { text: 'teodor' })
  expect(people).toMatchObject([{ broughtBack: 2, roles: ['grower'] }])
})

test('says at the field what is missing, keeps what was typed through a reload, and takes a scan', {
  tag: '@long',
}, async ({ page }) => {
  await open(page, '/take-back')
  await expect(field(page, 'Who brings it?')).toBeFocused()
  await press(page, 'Control+Enter')
  await expect(shown(page, 'Who brings it? Type a few letters')).toBeVisible()
  await type(page, 'Teodor Ash')
  await expect(page.getByRole('option', { name: /is new here/ })).toBeVisible()
  await press(page, 'Enter')
  await expect(page.getByLabel('Town')).toBeFocused()
  await press(page, 'Enter', 'Enter', 'Enter')
  await expect(field(page, 'Grown from')).toBeFocused()
  await press(page, 'Control+Enter')
  await expect(shown(page, 'Which lot was it grown from?')).toBeVisible()
  await scan(page, shelf.tomato.scanCode)
  await expect(field(page, 'Grown from')).toHaveValue(/Widow Tarn/)
  await expect(page.getByLabel('Harvest year')).toBeFocused()
  await page.getByLabel('Plants grown').focus()
  await type(page, 'a few')
  await press(page, 'Control+Enter')
  await expect(shown(page, 'Type how many plants')).toBeVisible()
  await expectNoBarrier(page)
  await page.reload()
  await expect(page.getByLabel('Plants grown')).toHaveValue('a few')
  await expect(field(page, 'Grown from')).toHaveValue(/Widow Tarn/)
})

test('lets a promise go with its reason, by keyboard alone', { tag: '@long' }, async ({ app, page }) => {
  const { personId } = await aMemberWithSeedOut(app)
  await open(page, '/take-back')
  await page.getByRole('button', { name: 'stop waiting for what Maren Holt hoped to bring back' }).focus()
  await press(page, 'Enter')
  await expect(page.getByLabel('Why')).toBeFocused()
  await press(page, 'Enter')
  await expect(shown(page, 'Type something here.')).toBeVisible()
  await expectNoBarrier(page)
  await type(page, 'hail in July')
  await press(page, 'Enter')
  await expect(shown(page, /Nobody has named seed to bring back/)).toBeVisible()
  const { visits } = await app.call('withdrawal.list-open', { personId })
  expect(visits[0]?.promise).toMatchObject({ state: 'waived', waiverReason: 'hail in July' })
  await page.getByRole('button', { name: /undo/i }).focus()
  await press(page, 'Enter')
  await expect(shown(page, 'One visit that seed may come back from, 1 overdue')).toBeVisible()
})

test('holds long names, empty and dark, on a narrow window too', { tag: '@long' }, async ({ app, page }) => {
  await open(page, '/take-back')
  await expect(shown(page, /Nobody has named seed to bring back/)).toBeVisible()
  await expectNoBarrier(page)
  const { personId } = await app.call('person.create', { name: `Wilhelmina ${LONG_NAME}` })
  await app.call('lot.release', { lotId: shelf.maize.lotId, checked: 'food colour' })
  await app.call('withdrawal.record', {
    person: { personId },
    on: '2026-01-04',
    itIsSo: ['2026-01-04'],
    lines: [{ lotId: shelf.maize.lotId, amount: '5 g' }],
    promised: `as much as can be spared of the ${LONG_NAME}`,
    despite: ['too-few-left', 'treated'],
    reason: 'to be grown for the library, with gloves',
  })
  await page.reload()
  await expect(shown(page, /One visit that seed may come back from/)).toBeVisible()
  await expect(field(page, 'Who brings it?')).toBeFocused()
  await type(page, 'wilh')
  await expect(page.getByRole('option', { name: /Wilhelmina/ })).toBeVisible()
  await press(page, 'Enter')
  await expect(page.getByRole('listbox', { name: /has out/ })).toBeVisible()
  await page.setViewportSize({ width: 320, height: 640 })
  await expectNoBarrier(page)
  const wide = await page.evaluate<number>(
    'document.documentElement.scrollWidth - document.documentElement.clientWidth',
  )
  expect(wide).toBe(0)
})
