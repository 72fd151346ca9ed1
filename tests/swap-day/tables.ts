import type { Page } from '@playwright/test'
import type { Keys } from '../app/support/keys.ts'
import type { RunningApp } from '../app/support/running-app.ts'
import { seen } from './seen.ts'
import {
  DONORS,
  type DonorOfDay,
  type GiftOfDay,
  MEMBERS,
  type MemberOfDay,
  PAPER_SHEET,
  RETURNS,
} from './the-day.ts'

/** The tables of the swap day, gone through with the keyboard alone. */
export interface Tables {
  readonly page: Page
  readonly app: RunningApp
  readonly keys: Keys
}

const WAYS_AT_MOST = 60

/** What the keyboard is on, in words. */
const focusedWords = (page: Page) =>
  page.evaluate<string>(`(() => {
    const at = document.activeElement
    return at === document.body ? '' : (at.labels?.[0] ?? at).textContent ?? ''
  })()`)

/** Goes on with Tab, or back with Shift+Tab, until something has the focus. */
export async function tabTo(
  { page, keys }: Tables,
  name: RegExp,
  by: 'Tab' | 'Shift+Tab' = 'Tab',
): Promise<void> {
  for (let step = 0; step < WAYS_AT_MOST; step++) {
    await keys.press(by)
    if (name.test((await focusedWords(page)).trim())) return
  }
  throw new Error(`${by} does not reach ${name}`)
}

/** Opens a screen by its word on the rail: F6 to the rail, arrows to the word. */
export async function goTo({ page, keys }: Tables, word: string): Promise<void> {
  const words = await page.locator('.rail-word').allTextContents()
  const onRail = page.locator('.rail-word:focus')
  while ((await onRail.count()) === 0) await keys.press('Shift+F6')
  const way = words.indexOf(word) - words.indexOf(await focusedWords(page))
  for (let step = 0; step < Math.abs(way); step++) await keys.press(way > 0 ? 'ArrowRight' : 'ArrowLeft')
  await keys.press('Enter')
}

const field = (page: Page, name: string) => page.getByLabel(name, { exact: true })
const envelopes = (page: Page) => page.getByRole('main').locator('.envelope')

/** Somebody: found by letters, added with a town, or nobody. The next field has the focus afterwards. */
async function person(
  { page, keys }: Tables,
  who: Pick<DonorOfDay, 'name' | 'town' | 'mayWrite'>,
): Promise<void> {
  if (who.name === 'nobody') return keys.press('Enter', 'Enter')
  await keys.type(who.name)
  await keys.press('Enter')
  if (who.town === undefined) return
  await seen(field(page, 'Town')).toBeFocused()
  await keys.type(who.town)
  await keys.press('Enter', 'Enter')
  if (!who.mayWrite) return keys.press('Enter')
  await keys.press('Space', 'Enter')
  await seen(field(page, 'E-mail')).toBeFocused()
  await keys.press('Enter')
}

async function gift(
  tables: Tables,
  { variety, crop, harvest, amount, sample = '', becomes }: GiftOfDay,
): Promise<void> {
  const { page, keys } = tables
  await seen(field(page, 'Variety')).toBeFocused()
  await keys.type(variety)
  await keys.press('Enter')
  if (crop !== undefined) {
    await seen(field(page, 'Its crop')).toBeFocused()
    await keys.type(crop)
    await keys.press('Enter')
  }
  await seen(field(page, 'Harvest year')).toBeFocused()
  await keys.type(harvest)
  await keys.press('Enter')
  await keys.type(amount)
  await keys.press('Enter')
  await keys.type(sample)
  if (becomes === 'treated') {
    await keys.press('Shift+Enter', 'Enter')
    await keys.type('From a feed sack.')
    await keys.press('Enter', 'Enter', 'Enter')
    await seen(page.getByRole('checkbox', { name: 'treated seed' })).toBeFocused()
    await keys.press('Space')
    await tabTo(tables, /^Add this gift/)
  }
  if (becomes === 'declined') {
    await tabTo(tables, /^Decline/)
    await keys.press('Enter')
    await keys.type('mould')
  }
  if (becomes === 'later') {
    await tabTo(tables, /^Later/)
    await keys.press('Enter')
    await seen(field(page, 'What does it wait for?')).toBeFocused()
    await keys.type('some')
  }
  await keys.press('Enter')
}

/** Pins where the seed of the day goes, once, and goes back to the gift. */
async function pinPlace(tables: Tables, place: RegExp): Promise<void> {
  const { page, keys } = tables
  await tabTo(tables, /^Where it goes/)
  const chosen = field(page, 'Where it goes').locator('option:checked')
  while (!place.test((await chosen.textContent()) ?? '')) await keys.press('ArrowDown')
  await keys.press('Escape')
}

/** A table of donors: every visit is saved, and the next donor is one key away. */
export async function takeIn(tables: Tables): Promise<void> {
  const { page, keys } = tables
  for (const donor of DONORS) {
    await seen(page.getByRole('combobox', { name: 'Who brings it?' })).toBeFocused()
    await person(tables, donor)
    if (donor === DONORS[0]) await pinPlace(tables, /Window shelf/)
    for (const [at, each] of donor.gifts.entries()) {
      await gift(tables, each)
      await seen(envelopes(page)).toHaveCount(at + 1)
    }
    await keys.press('Control+Enter')
    await seen(page.getByRole('button', { name: 'Next donor' })).toBeFocused()
    await keys.press('Enter')
  }
}

async function packet({ page, keys }: Tables, lot: string, amount: string | undefined): Promise<void> {
  await seen(field(page, 'Lot')).toBeFocused()
  await keys.type(lot)
  await keys.press('Enter')
  await seen(field(page, 'Amount')).toBeFocused()
  if (amount !== undefined) await keys.type(amount)
  await keys.press('Enter')
}

/** Ten members: packets of the usual size or any amount, and what is promised back. */
export async function handOut(tables: Tables, members: readonly MemberOfDay[] = MEMBERS): Promise<void> {
  const { page, keys } = tables
  for (const member of members) {
    await seen(page.getByRole('combobox', { name: 'Who takes it?' })).toBeFocused()
    await person(tables, { name: member.name, ...(member.known ? {} : { town: 'Quillhaven' }) })
    for (const [at, { lot, amount }] of member.takes.entries()) {
      await packet(tables, lot, amount)
      await seen(envelopes(page)).toHaveCount(at + 1)
    }
    if (member.promises !== undefined) {
      await keys.press('Shift+Enter')
      await seen(field(page, 'Hopes to bring back')).toBeFocused()
      await keys.type(member.promises)
    }
    await keys.press('Control+Enter')
    await seen(page.getByRole('region', { name: 'What is left' })).toBeVisible()
  }
}

/** Seed that comes back, from what the member has out. */
export async function takeBack(tables: Tables): Promise<void> {
  const { page, keys } = tables
  for (const { who, amount, plants } of RETURNS) {
    await seen(page.getByRole('combobox', { name: 'Who brings it?' })).toBeFocused()
    await keys.type(who)
    await keys.press('Enter')
    await seen(page.getByRole('listbox', { name: /has out/ })).toBeFocused()
    await keys.press('Enter')
    await seen(field(page, 'Harvest year')).toBeFocused()
    await keys.press('Enter')
    await keys.type(amount)
    await keys.press('Enter', 'Enter')
    await keys.type(plants)
    await keys.press('Control+Enter')
    await seen(page.getByText(`${amount}`).first()).toBeVisible()
    await tabTo(tables, /^Next/)
    await keys.press('Enter')
  }
}

/** Types in the sheet of paper that lay at the second table. */
export async function paperSheet(tables: Tables): Promise<void> {
  const { page, keys, app } = tables
  await seen(field(page, 'Day on the sheet')).toBeFocused()
  const { today } = await app.call('collection.get', {})
  await keys.type(today)
  await seen(field(page, 'Day on the sheet')).toHaveValue(
    new Intl.DateTimeFormat('en-GB', { dateStyle: 'medium', timeZone: 'UTC' }).format(Date.parse(today)),
  )
  await keys.press('Enter')
  for (const [at, line] of PAPER_SHEET.entries()) {
    await seen(page.getByRole('combobox', { name: 'Who took it?' })).toBeFocused()
    await person(tables, { name: line.who, ...(line.known ? {} : { town: '' }) })
    await packet(tables, line.lot, line.amount)
    await seen(page.locator('.table-total')).toHaveText(at === 0 ? '1 line' : `${at + 1} lines`)
  }
  await keys.press('Control+Enter')
  await seen(page.getByText('Saved: a sheet of 12 lines.')).toBeVisible()
}
