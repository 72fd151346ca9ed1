import type { Page } from '@playwright/test'
import { readPdf } from '../builders/read-pdf.ts'
import { LONG_RUN } from '../support/sized.ts'
import { expectNoBarrier } from './support/axe.ts'
import { press, type } from './support/keys.ts'
import { open } from './support/open.ts'
import type { RunningApp } from './support/running-app.ts'
import { shown } from './support/shown.ts'
import { field, listedLines } from './support/take-in-table.ts'
import { expect, test } from './support/test.ts'

test.use({ drawer: 'empty' })

const SQUASH = 'Turban'

/** Looks a part of a screen over for barriers, in light and dark; in the long run, since each look takes a second. */
const looksOpenToAll = LONG_RUN ? expectNoBarrier : async () => {}

const chooser = (page: Page, name: string) => page.getByRole('combobox', { name, exact: true })
const lotOf = (app: RunningApp, lotId: number) => app.call('lot.get', { lotId })

/** Chooses what is offered first for some letters. */
async function choose(page: Page, letters: string): Promise<void> {
  await type(page, letters)
  await press(page, 'Enter')
}

/** A gift for our community only, whose story is not published. */
async function takeIn(page: Page, app: RunningApp): Promise<number> {
  await open(page, '/take-in')
  await expect(chooser(page, 'Who brings it?')).toBeFocused()
  await choose(page, 'ilk')
  await choose(page, SQUASH)
  await choose(page, 'squash')
  await choose(page, '2024')
  await type(page, '200 g')
  await press(page, 'Shift+Enter')
  await expect(field(page, 'Where it was grown')).toBeFocused()
  await press(page, 'Enter', 'Enter')
  await expect(field(page, 'Its story, as you write it')).toBeFocused()
  await type(page, 'Found in the mill.')
  await press(page, 'Enter', 'Enter')
  await expect(field(page, 'The donor set limits')).toBeFocused()
  await press(page, 'Space', 'Enter')
  await expect(field(page, 'Who may have it')).toBeFocused()
  await press(page, 'ArrowDown', 'Enter', 'Space')
  await expect(field(page, 'Who may have it').locator('option:checked')).toHaveText('our community')
  await expect(field(page, 'Its story may be published')).not.toBeChecked()
  await looksOpenToAll(page, '.more-fields')
  await press(page, 'Control+Enter')
  await expect(page.getByRole('heading', { name: 'Taken in: one gift from Ilka Brandt' })).toBeVisible()
  const { rows } = await app.call('lot.list', {})
  expect(rows).toHaveLength(1)
  const lotId = rows[0]?.lotId ?? 0
  const { limits, limitsTold, cautions } = await lotOf(app, lotId)
  expect(limits).toMatchObject({ share: 'community', publishStory: false, publishName: true })
  expect(limitsTold).toEqual(['For our community only.', 'Its story is not published.'])
  expect(cautions).toEqual([])
  return lotId
}

interface Packet {
  readonly to: string
  readonly lot: string
  readonly amount: string
  /** What is asked about, as it is read on the screen. */
  readonly asks: readonly RegExp[]
  readonly reason: string
}

/** A packet goes out, for the reason that is asked for. */
async function handOut(page: Page, { to, lot, amount, asks, reason }: Packet): Promise<void> {
  await open(page, '/hand-out')
  await expect(chooser(page, 'Who takes it?')).toBeFocused()
  await choose(page, to)
  await choose(page, lot)
  await choose(page, amount)
  await expect(field(page, 'Reason for giving it anyway')).toBeFocused()
  for (const asked of asks) await expect(shown(page, asked)).toBeVisible()
  await type(page, reason)
  await press(page, 'Enter')
  await expect(listedLines(page, 'Hand out')).toContainText('goes out with the reason given')
  await press(page, 'Control+Enter')
  await expect(page.getByRole('region', { name: 'What is left' })).toContainText(SQUASH)
}

/** Somebody brings seed of it back that grew near others of its kind. */
async function takeBack(page: Page, app: RunningApp, parentId: number): Promise<number> {
  await open(page, '/take-back')
  await expect(chooser(page, 'Who brings it?')).toBeFocused()
  await choose(page, 'mar')
  await expect(page.getByRole('listbox', { name: 'What Maren Holt has out' })).toBeFocused()
  await press(page, 'Enter')
  await expect(field(page, 'Harvest year')).toBeFocused()
  await choose(page, '2025')
  await choose(page, '6 g')
  await press(page, 'Enter')
  await expect(field(page, 'Plants grown')).toBeFocused()
  await choose(page, '9')
  await expect(field(page, 'Did anything of its kind flower nearby?')).toBeFocused()
  await press(page, 'ArrowDown', 'Enter')
  await expect(field(page, 'How, or what')).toBeFocused()
  await choose(page, 'gourds')
  await expect(field(page, 'Anything unlike the rest, sick or wet?')).toBeFocused()
  await expect(shown(page, /Waits to be checked, and is not offered until then/)).toContainText(
    'it may have crossed',
  )
  await looksOpenToAll(page, '.table-card')
  await press(page, 'Control+Enter')
  await expect(page.getByRole('list', { name: 'Taken back' })).toContainText('in quarantine')
  const { returns } = await app.call('return.list-to-check', {})
  expect(returns).toMatchObject([{ person: 'Maren Holt' }])
  const lotId = returns[0]?.lotId ?? 0
  const back = await lotOf(app, lotId)
  expect(back).toMatchObject({
    quarantined: true,
    generation: 1,
    parents: [{ lotId: parentId }],
    cautions: [{ caution: 'possible-cross' }],
  })
  expect(back.limits.share).toBe('community')
  return lotId
}

/** Nobody can say whether it is true to type: it is passed on as what it may be. */
async function check(page: Page, app: RunningApp, lotId: number): Promise<void> {
  const { lotNumber } = await lotOf(app, lotId)
  await open(page, '/take-in/waiting')
  await page.getByRole('button', { name: `check ${lotNumber}` }).press('Enter')
  await expect(field(page, 'Dry?')).toBeFocused()
  await press(page, 'Home', 'Tab', 'Home', 'Tab', 'Tab', 'Tab')
  await expect(field(page, 'What becomes of it')).toBeFocused()
  await press(page, 'ArrowUp', 'Tab')
  await expect(field(page, 'What becomes of it').locator('option:checked')).toContainText('pass it on')
  await looksOpenToAll(page, 'form.card-form')
  await press(page, 'Enter')
  await expect(shown(page, 'Nothing that came back waits.')).toBeVisible()
  const { quarantined, cautions, cameBack } = await lotOf(app, lotId)
  expect({ quarantined, cautions }).toMatchObject({
    quarantined: false,
    cautions: [{ caution: 'possible-cross' }],
  })
  expect(cameBack?.checks).toEqual([expect.stringContaining('type not known; passed on as perhaps not')])
}

/** All that stands on the label of a lot. */
async function labelOf(app: RunningApp, lotId: number): Promise<string> {
  const printed = await app.call('label.print', { labels: [{ lotId }], sheet: 'a4-21' })
  const pdf = await readPdf(Buffer.from(printed.pdf, 'base64'))
  const text = pdf.pages.flatMap(({ characters }) => characters.map(({ character }) => character)).join('')
  pdf.close()
  return text
}

/** What is found in the first lot is told of all that came of it, from its card, as one entry; undo gives all of it back. */
async function recall(page: Page, app: RunningApp, givenId: number, backId: number): Promise<void> {
  const [given, back] = [await lotOf(app, givenId), await lotOf(app, backId)]
  const { entries: before } = await app.call('entry.list', {})
  await open(page, `/shelf/lot/${givenId}`)
  await page.getByRole('link', { name: 'Trace: where it came from, who has some' }).press('Enter')
  await expect(shown(page, '2 lots, 2 people have some')).toBeVisible()
  await page.getByRole('button', { name: 'Recall this seed' }).press('Enter')
  await expect(field(page, 'What was found')).toBeFocused()
  await type(page, 'mosaic')
  await press(page, 'Tab')
  await expect(field(page, 'What to do with it')).toBeFocused()
  await type(page, 'Bring it back.')
  const offspring = page.getByRole('group', { name: 'Grown from it: perhaps affected. You decide.' })
  await press(page, 'Tab', 'Tab')
  await expect(offspring.getByRole('checkbox', { name: back.lotNumber })).toBeFocused()
  await press(page, 'Space')
  await expect(
    shown(page, '2 lots go into quarantine. One person can be written to, one is to be asked in person.'),
  ).toBeVisible()
  await looksOpenToAll(page, 'form.card-form')
  await press(page, 'Tab')
  await expect(page.getByRole('button', { name: 'Recall 2 lots' })).toBeFocused()
  await press(page, 'Enter')
  await expect(page.getByRole('heading', { name: `Recall of ${given.lotNumber}` })).toBeVisible()
  const lines = (table: string) => page.getByRole('table', { name: table }).getByRole('row')
  await expect(lines('Lots').filter({ hasText: back.lotNumber })).toContainText('perhaps')
  await expect(shown(page, 'One person agreed to be written to; ask one in person.')).toBeVisible()
  await expect(lines('Who has some').filter({ hasText: 'Maren Holt' })).toContainText('may be written to')
  await expect(lines('Who has some').filter({ hasText: 'Teodor Ash' })).toContainText('perhaps affected')
  await looksOpenToAll(page, 'main')
  const { entries } = await app.call('entry.list', {})
  expect(entries.length).toBe(before.length + 1)
  const { recalls } = await app.call('recall.list', {})
  expect(recalls).toMatchObject([{ lotId: givenId, reason: 'mosaic', lots: 2 }])
  const { people } = await app.call('recall.get', { recallId: recalls[0]?.recallId ?? 0 })
  expect(people.map(({ name, mayWrite }) => [name, mayWrite])).toEqual([
    ['Maren Holt', true],
    ['Teodor Ash', false],
  ])
  for (const lotId of [givenId, backId]) {
    const { quarantined, quarantineReason } = await lotOf(app, lotId)
    expect([quarantined, quarantineReason]).toEqual([true, 'Recalled: mosaic'])
  }
  await page.getByRole('button', { name: 'undo' }).press('Enter')
  await expect(shown(page, 'There is no such recall')).toBeVisible()
  expect(await lotOf(app, givenId)).toEqual(given)
  expect(await lotOf(app, backId)).toEqual(back)
}

test('a gift with terms is grown, comes back perhaps crossed, is checked, handed out and recalled', async ({
  app,
  page,
}) => {
  test.slow()
  await app.call('person.create', { name: 'Ilka Brandt', town: 'Quillhaven' })
  await app.call('person.create', {
    name: 'Maren Holt',
    address: '3 Hollow Lane\nQuillhaven',
    mayWrite: true,
  })
  await app.call('person.create', { name: 'Teodor Ash', town: 'Quillhaven' })
  const givenId = await takeIn(page, app)
  const ours = /is for our community only/
  await handOut(page, {
    to: 'mar',
    lot: 'turb',
    amount: '9 g',
    asks: [ours],
    reason: 'a neighbour',
  })
  const backId = await takeBack(page, app, givenId)
  await check(page, app, backId)
  const { lotNumber } = await lotOf(app, backId)
  await handOut(page, {
    to: 'teo',
    lot: lotNumber,
    amount: '1 g',
    asks: [ours, /May not be true to type: it may have crossed/],
    reason: 'for the pot',
  })
  const label = await labelOf(app, backId)
  for (const words of ['For our community only.', 'May not be true to type: it may have crossed.'])
    expect(label).toContain(words)
  expect(label).not.toContain('in the mill')
  await recall(page, app, givenId, backId)
})
