import type { Page } from '@playwright/test'
import { expectNoBarrier } from './support/axe.ts'
import { Keys, scan } from './support/keys.ts'
import { open } from './support/open.ts'
import type { RunningApp } from './support/running-app.ts'
import { shown } from './support/shown.ts'
import { LONG_NAME, type SmallShelf, smallShelf } from './support/small-shelf.ts'
import { listedLines } from './support/take-in-table.ts'
import { answerLate, expect, test } from './support/test.ts'

test.use({ drawer: 'shelf' })

let shelf: SmallShelf

test.beforeEach(async ({ app }) => {
  shelf = smallShelf()
  await app.call('person.create', { name: 'Tove Lindqvist', town: 'Quillhaven', roles: ['member'] })
})

const field = (page: Page, name: string) => page.getByLabel(name, { exact: true })
const who = (page: Page) => page.getByRole('combobox', { name: 'Who takes it?' })
const problem = (page: Page, text: string) => shown(page, text)
const envelopes = (page: Page) => listedLines(page, 'Hand out')
const left = async (app: RunningApp, lotId: number) => (await app.call('lot.get', { lotId })).quantity.count

async function atTheTable(page: Page): Promise<Keys> {
  await open(page, '/hand-out')
  await expect(who(page)).toBeFocused()
  return new Keys(page)
}

test('three packets to a known member take few keys', async ({ app, page }) => {
  const keys = await atTheTable(page)
  await keys.type('tov')
  await keys.press('Enter')
  for (const [at, letters] of ['clim', 'clim', 'hr'].entries()) {
    await keys.type(letters)
    await keys.press('Enter')
    await expect(field(page, 'Amount')).toHaveValue('1 packet of 20')
    await keys.press('Enter')
    await expect(envelopes(page)).toHaveCount(at + 1)
  }
  await keys.press('Control+Enter')
  await expect(page.getByRole('region', { name: 'What is left' })).toContainText('240 seeds')
  console.log(`Three packets to a known member: ${keys.pressed} key presses.`)
  expect(keys.pressed).toBeLessThan(25)
  expect(await left(app, shelf.bean.lotId)).toBe(240)
  await expect(who(page)).toBeFocused()
  await expect(who(page)).toHaveValue('')
  await page.getByRole('button', { name: 'undo' }).click()
  await expect(async () => expect(await left(app, shelf.bean.lotId)).toBe(300)).toPass()
})

test('a visit without a name, its promise, its day and its slip', { tag: '@long' }, async ({ app, page }) => {
  const keys = await atTheTable(page)
  await keys.press('Enter', 'Enter')
  await keys.type('clim')
  await keys.press('Enter', 'Shift+Enter')
  await expect(field(page, 'Hopes to bring back')).toBeFocused()
  await keys.type('twice as many')
  await keys.press('Enter', 'Enter')
  await expect(page.getByRole('checkbox', { name: 'Print a slip to take along' })).toBeFocused()
  await keys.press('Space', 'Enter')
  await expect(field(page, 'Lot')).toBeFocused()
  await keys.press('Control+Enter')
  await expect(page.getByRole('region', { name: 'What is left' })).toBeVisible()
  const { groups } = await app.call('tray.list', {})
  expect(groups.find(({ kind }) => kind === 'slip')?.items).toHaveLength(1)
  const { ledger } = await app.call('lot.get', { lotId: shelf.bean.lotId })
  expect(ledger.find(({ kind }) => kind === 'withdrawal')).toMatchObject({ person: '', count: -20 })
})

test('what would remain is shown before anything is saved', { tag: '@long' }, async ({ app, page }) => {
  const keys = await atTheTable(page)
  await keys.press('Enter', 'Enter')
  await keys.type('clim')
  await keys.press('Enter')
  await keys.type('250 seeds')
  await expect(shown(page, 'Leaves 50 seeds')).toBeVisible()
  await expectNoBarrier(page)
  expect(await left(app, shelf.bean.lotId)).toBe(300)
})

test('more than there is shows the balance, and its choice fills the amount', { tag: '@long' }, async ({
  app,
  page,
}) => {
  const keys = await atTheTable(page)
  await keys.type('tov')
  await keys.press('Enter')
  await keys.type('clim')
  await keys.press('Enter')
  await keys.type('400 seeds')
  await expect(field(page, 'Amount')).toHaveAccessibleDescription(/holds 300 seeds/)
  await expectNoBarrier(page)
  await field(page, 'Amount').focus()
  await keys.press('Enter')
  await expect(page.getByRole('button', { name: '300 seeds', exact: true })).toBeFocused()
  await keys.press('Escape')
  await expect(field(page, 'Amount')).toBeFocused()
  await keys.press('Control+Enter')
  await expect(field(page, 'Amount')).toHaveValue('400 seeds')
  await expect(field(page, 'Amount')).toHaveAccessibleDescription(/holds 300 seeds/)
  expect(await left(app, shelf.bean.lotId)).toBe(300)
  await expect(page.getByRole('button', { name: '300 seeds', exact: true })).toBeVisible()
  await keys.press('ArrowDown', 'Enter')
  await expect(field(page, 'Amount')).toHaveValue('300 seeds')
  await expect(field(page, 'Amount')).toBeFocused()
  await expect(shown(page, 'one regrowing needs')).toBeVisible()
})

test('an amount corrected in one go is not held back by what was previewed of the one before', {
  tag: '@long',
}, async ({ page }) => {
  const keys = await atTheTable(page)
  await keys.press('Enter', 'Enter')
  await keys.type('clim')
  await keys.press('Enter')
  await keys.type('900')
  await keys.type(' seeds')
  await expect(page.getByRole('button', { name: '300 seeds', exact: true })).toBeVisible()
  await keys.press('Control+a')
  await keys.type('9 g')
  await keys.press('Enter')
  await expect(envelopes(page)).toContainText('9 g')
})

test('too few left asks for a reason, keeps what was typed, and goes out with it', async ({ app, page }) => {
  const keys = await atTheTable(page)
  await keys.type('tov')
  await keys.press('Enter')
  await keys.type('widow')
  await keys.press('Enter')
  await keys.type('8 seeds')
  await keys.press('Enter')
  await keys.type('ask')
  await expect(field(page, 'Reason for giving it anyway')).toBeFocused()
  await expect(field(page, 'Reason for giving it anyway')).toHaveValue('ask')
  await expect(shown(page, 'one regrowing needs')).toBeVisible()
  await keys.press('Control+a', 'Backspace', 'Enter')
  await expect(problem(page, 'Say in a few words')).toBeVisible()
  await expectNoBarrier(page)
  await field(page, 'Reason for giving it anyway').focus()
  await keys.press('Control+Enter')
  await expect(field(page, 'Reason for giving it anyway')).toBeFocused()
  await expect(field(page, 'Amount')).toHaveValue('8 seeds')
  expect(await left(app, shelf.tomato.lotId)).toBe(12)
  await keys.type('the last grower of it')
  await keys.press('Control+Enter')
  await expect(page.getByRole('region', { name: 'What is left' })).toContainText('4 seeds')
  expect(await left(app, shelf.tomato.lotId)).toBe(4)
})

test('more packets than one visit usually takes ask for a reason', { tag: '@long' }, async ({
  app,
  page,
}) => {
  await app.call('settings.change', { settings: { visitLimit: 1 } })
  const keys = await atTheTable(page)
  await keys.press('Enter', 'Enter')
  await keys.type('clim')
  await keys.press('Enter', 'Enter')
  await keys.type('clim')
  await keys.press('Enter')
  await expect(shown(page, '2 packets are more than the 1')).toBeVisible()
  await keys.press('Enter')
  await expect(field(page, 'Reason for giving it anyway')).toBeFocused()
  await keys.type('for the whole school')
  await keys.press('Control+Enter')
  await expect(page.getByRole('region', { name: 'What is left' })).toContainText('260 seeds')
})

test('scanned packets list themselves one after the other', async ({ app, page }) => {
  const keys = await atTheTable(page)
  await keys.type('tov')
  await keys.press('Enter')
  await scan(page, shelf.bean.scanCode)
  await expect(field(page, 'Lot')).toHaveValue(/Hrášek’s Climber/)
  await expect(field(page, 'Amount')).toBeFocused()
  await scan(page, shelf.bean.scanCode)
  await expect(envelopes(page)).toHaveCount(1)
  await expect(field(page, 'Amount')).toHaveValue('1 packet of 20')
  await keys.press('Control+Enter')
  await expect(page.getByRole('region', { name: 'What is left' })).toContainText('260 seeds')
  expect(await left(app, shelf.bean.lotId)).toBe(260)
})

test('a label scanned while a name is still being looked for falls into no field', { tag: '@long' }, async ({
  page,
}) => {
  await answerLate(page, (operation) => (operation === 'person.search' ? 700 : 0))
  const keys = await atTheTable(page)
  await keys.type('tov')
  await keys.press('Enter')
  await scan(page, shelf.bean.scanCode)
  await scan(page, shelf.tomato.scanCode)
  await expect(who(page)).toHaveValue('Tove Lindqvist')
  await expect(envelopes(page)).toHaveCount(1)
  await expect(envelopes(page)).toContainText('Hrášek’s Climber')
  await expect(field(page, 'Lot')).toHaveValue(/^Widow Tarn.*, [^,]+$/)
  await page.unrouteAll({ behavior: 'wait' })
})

test('keys pressed ahead of every answer do what they would have done after it', async ({ app, page }) => {
  const keys = await atTheTable(page)
  await answerLate(page, () => 400)
  await keys.type('tov')
  await keys.press('Enter')
  await keys.type('clim')
  await keys.press('Enter')
  await keys.type('400 seeds')
  await keys.press('Enter', 'Enter', 'Control+a')
  await keys.type('20 seeds')
  await keys.press('Control+Enter')
  await keys.type('zo')
  await expect(page.getByRole('region', { name: 'What is left' })).toContainText('280 seeds')
  await expect(who(page)).toBeFocused()
  await expect(who(page)).toHaveValue('zo')
  expect(await left(app, shelf.bean.lotId)).toBe(280)
})

test('a lot in quarantine is never offered, and a scan of it says why', { tag: '@long' }, async ({
  page,
}) => {
  const keys = await atTheTable(page)
  await keys.press('Enter', 'Enter')
  await keys.type('harrow')
  await keys.press('Enter')
  await expect(problem(page, 'No lot to hand out fits harrow')).toBeVisible()
  await expect(field(page, 'Lot')).toHaveValue('harrow')
  await scan(page, shelf.maize.scanCode)
  await expect(problem(page, 'is in quarantine')).toBeVisible()
  await expect(shown(page, LONG_NAME).first()).toBeVisible()
  await expectNoBarrier(page)
})

test('an unfinished visit is there again after a reload', { tag: '@long' }, async ({ page }) => {
  const keys = await atTheTable(page)
  await keys.type('tov')
  await keys.press('Enter')
  await keys.type('clim')
  await keys.press('Enter', 'Enter')
  await expect(envelopes(page)).toHaveCount(1)
  await keys.type('wido')
  await page.reload()
  await expect(field(page, 'Lot')).toHaveValue('wido')
  await expect(field(page, 'Lot')).toBeFocused()
  await expect(envelopes(page)).toContainText('Hrášek’s Climber')
  await expect(who(page)).toHaveValue('Tove Lindqvist')
})

test('another window sees at once what this one handed out', { tag: '@long' }, async ({
  app,
  context,
  page,
}) => {
  const keys = await atTheTable(page)
  const second = await context.newPage()
  await second.goto(app.address)
  await open(second, '/hand-out')
  const others = new Keys(second)
  await expect(who(second)).toBeFocused()
  await others.press('Enter', 'Enter')
  await others.type('clim')
  await others.press('Enter')
  await expect(shown(second, 'holds 300 seeds')).toBeVisible()
  await page.bringToFront()
  await keys.press('Enter', 'Enter')
  await keys.type('clim')
  await keys.press('Enter', 'Control+Enter')
  await expect(shown(second, 'holds 280 seeds')).toBeVisible()
  await second.bringToFront()
  await others.press('Control+Enter')
  await expect(second.getByRole('region', { name: 'What is left' })).toContainText('260 seeds')
})

test('a narrow window and large text leave nothing out of reach', { tag: '@long' }, async ({ page }) => {
  await page.setViewportSize({ width: 320, height: 720 })
  const keys = await atTheTable(page)
  await keys.press('Enter', 'Enter')
  await keys.type('clim')
  await keys.press('Enter')
  await expect(shown(page, 'Leaves 280 seeds')).toBeVisible()
  for (const text of ['100%', '200%']) {
    await page.evaluate(`document.documentElement.style.fontSize = '${text}'`)
    const wider = await page.evaluate(
      "document.querySelector('main').scrollWidth - document.querySelector('main').clientWidth",
    )
    expect(wider, `at ${text} nothing is wider than the window`).toBe(0)
  }
  await expectNoBarrier(page)
})
