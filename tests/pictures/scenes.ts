import type { Page } from '@playwright/test'
import { Keys } from '../app/support/keys.ts'
import { open } from '../app/support/open.ts'
import type { RunningApp } from '../app/support/running-app.ts'
import { inWindows1252, messyList } from '../builders/messy-list.ts'
import { savePlanOnce } from './saved-plan.ts'

/** One picture: its name, and what is done before it is taken. */
export interface Scene {
  readonly name: string
  readonly play: (page: Page, app: RunningApp) => Promise<void>
}

async function lotOf(app: RunningApp, state: 'rescue' | 'regrow' | 'well-stocked'): Promise<number> {
  const { rows } = await app.call('lot.list', { state, sort: 'count', descending: state !== 'rescue' })
  const lot = rows[0]
  if (lot === undefined) throw new Error(`The demonstration has no lot in the state ${state}`)
  return lot.lotId
}

const at =
  (path: string) =>
  (page: Page): Promise<void> =>
    open(page, path)

/** Types a few letters and takes the option that is offered for them. */
async function chosen(page: Page, field: RegExp, letters: string, option: RegExp): Promise<void> {
  const keys = new Keys(page)
  await page.getByRole('combobox', { name: field }).focus()
  await keys.type(letters)
  await page.getByRole('option', { name: option }).first().waitFor()
  await keys.press('Enter')
}

async function firstWaiting(app: RunningApp): Promise<number> {
  const { gifts } = await app.call('gift.list', {})
  const gift = gifts[0]
  if (gift === undefined) throw new Error('In the demonstration no gift waits')
  return gift.giftId
}

export const SCENES: readonly Scene[] = [
  {
    name: 'take-in',
    play: async (page) => {
      await open(page, '/take-in')
      await chosen(page, /^Who/, 'ada', /Ada Fennimore/)
    },
  },
  {
    name: 'gifts-waiting',
    play: async (page, app) => open(page, `/take-in/waiting/${await firstWaiting(app)}`),
  },
  {
    name: 'hand-out',
    play: async (page) => {
      await open(page, '/hand-out')
      await chosen(page, /^Who/, 'ada', /Ada Fennimore/)
      await chosen(page, /^Lot/, 'ferry', /Ferry Lane/)
    },
  },
  {
    name: 'from-list',
    play: async (page) => {
      await open(page, '/take-in/list')
      const { text } = messyList(60)
      const file = { name: 'our-seeds.csv', mimeType: 'text/csv', buffer: inWindows1252(text) }
      await page.getByLabel(/^The list: a workbook/).setInputFiles(file)
      await page.getByRole('heading', { name: 'What becomes of its rows' }).waitFor()
    },
  },
  { name: 'paper-sheet', play: at('/hand-out/paper') },
  {
    name: 'take-back',
    play: async (page) => {
      await open(page, '/take-back')
      await chosen(page, /^Who/, 'ada', /Ada Fennimore/)
    },
  },
  { name: 'written', play: at('/written') },
  { name: 'shelf', play: at('/shelf') },
  {
    name: 'record',
    play: async (page, app) => open(page, `/shelf/lot/${await lotOf(app, 'well-stocked')}`),
  },
  {
    name: 'same-variety',
    play: async (page, app) => {
      const { rows } = await app.call('lot.list', { limit: 200 })
      const other = (row: (typeof rows)[number]) =>
        rows.find(({ cropId, variety }) => cropId === row.cropId && variety !== row.variety)
      const lot = rows.find(other)
      await open(page, `/shelf/lot/${lot?.lotId ?? ''}`)
      await page.getByRole('article').getByText('More', { exact: true }).click()
      await page.getByRole('button', { name: 'Same variety' }).click()
      const form = page.getByRole('form', { name: /^Another record of/ })
      await form.getByRole('combobox').fill(lot === undefined ? '' : (other(lot)?.variety ?? ''))
      await form.getByRole('option').first().click()
      await form.getByRole('button', { name: /^Join, and call both/ }).scrollIntoViewIfNeeded()
    },
  },
  {
    name: 'outlook',
    play: async (page, app) => {
      const { tests } = await app.call('germination.list', { state: 'finished' })
      await open(page, `/shelf/lot/${tests[0]?.lotId ?? ''}`)
      await page.getByText('Would it last longer elsewhere?').click()
      await page.evaluate("document.getElementById('outlook').scrollIntoView()")
    },
  },
  {
    name: 'record-rescue',
    play: async (page, app) => open(page, `/shelf/lot/${await lotOf(app, 'rescue')}`),
  },
  {
    name: 'stocktake',
    play: async (page, app) => {
      const { places } = await app.call('place.list', {})
      const place = places.find(({ lots }) => lots > 5)
      if (place === undefined) throw new Error('In the demonstration no place holds many lots')
      await open(page, `/stocktake/${place.placeId}`)
    },
  },
  {
    name: 'regrow',
    play: async (page) => {
      await open(page, '/regrow')
      await page.locator('.need-head').waitFor()
    },
  },
  {
    name: 'regrow-list',
    play: async (page, app) => {
      const { lists } = await app.call('season-list.list', {})
      await open(page, `/regrow/lists/${lists[0]?.listId ?? ''}`)
    },
  },
  {
    name: 'germination',
    play: async (page) => {
      await open(page, '/germination')
      await page.getByRole('heading', { name: 'Enter a count' }).waitFor()
    },
  },
  {
    name: 'germination-result',
    play: async (page, app) => {
      const { tests } = await app.call('germination.list', { state: 'finished', limit: 500 })
      const test = tests.find(({ replicates }) => replicates === 4)
      if (test === undefined) throw new Error('In the demonstration no test of four replicates is over')
      await open(page, `/germination/test/${test.testId}`)
      await page.getByRole('heading', { name: 'Result', exact: true }).waitFor()
      await page.getByRole('button', { name: 'Finished', exact: true }).click()
    },
  },
  {
    name: 'germination-plan',
    play: async (page, app) => {
      const { lots } = await app.call('germination.list-due', { limit: 500 })
      const due = lots.find(({ quantity }) => quantity.count >= 60 && quantity.count <= 130)
      if (due === undefined) throw new Error('In the demonstration no small lot is due to be tested')
      await open(page, `/germination/lot/${due.lotId}`)
      await page.getByRole('button', { name: 'To be tested' }).click()
    },
  },
  {
    name: 'season-plan',
    play: async (page) => {
      await open(page, '/regrow/plan')
      await page.getByRole('button', { name: 'Make a plan' }).click()
      await page.getByRole('status').filter({ hasText: 'scores' }).waitFor()
    },
  },
  {
    name: 'season-notes',
    play: async (page, app) => {
      await savePlanOnce(app)
      await open(page, '/regrow/season')
      await page.getByRole('heading', { level: 2 }).waitFor()
    },
  },
  {
    name: 'storage',
    play: async (page, app) => {
      const { places } = await app.call('place.list', {})
      const freezer = places.find(({ kind }) => kind === 'freezer')
      await open(page, `/storage/place/${freezer?.placeId ?? ''}`)
      await page.locator('.chart').waitFor()
    },
  },
  {
    name: 'storage-moves',
    play: async (page, app) => {
      const { places } = await app.call('storage.list', {})
      const fullest = places.toSorted((one, other) => other.lots - one.lots)[0]
      await open(page, `/storage/place/${fullest?.placeId ?? ''}`)
      await page.getByText('Would they last longer elsewhere?').click()
      await page.locator('.plain-table').scrollIntoViewIfNeeded()
    },
  },
  {
    name: 'storage-compare',
    play: async (page) => {
      await open(page, '/storage/compare')
      await page.locator('.plain-table').waitFor()
    },
  },
  {
    name: 'storage-round',
    play: async (page) => {
      await open(page, '/storage/round')
      await page
        .getByRole('group', { name: /^Pests/ })
        .first()
        .waitFor()
    },
  },
  {
    name: 'print',
    play: async (page) => {
      await open(page, '/print')
      await page.getByTitle('Packet labels, as they will be printed').waitFor()
    },
  },
  {
    name: 'letters-waiting',
    play: async (page) => {
      await open(page, '/print')
      await page.getByRole('button', { name: /^Thank-you letters/ }).click()
      await page.getByRole('form', { name: 'For all gifts of a time' }).scrollIntoViewIfNeeded()
    },
  },
  {
    name: 'people',
    play: async (page, app) => {
      const { people } = await app.call('person.list', {})
      await open(page, `/people/${people[0]?.personId ?? ''}`)
    },
  },
  {
    name: 'print-year',
    play: async (page) => {
      await open(page, '/print')
      await page.getByRole('button', { name: 'The report of a year' }).click()
      await page.getByTitle('The report, as they will be printed').waitFor()
    },
  },
  { name: 'settings', play: at('/settings') },
  {
    name: 'in-and-out',
    play: async (page) => {
      await open(page, '/in-and-out')
      await page.getByRole('button', { name: 'Look at the passports' }).click()
      await page.getByRole('button', { name: 'Save the passports' }).waitFor()
    },
  },
  {
    name: 'settings-sheet',
    play: async (page) => {
      await open(page, '/settings')
      await page.getByRole('button', { name: 'Add a label sheet' }).click()
      await page.getByRole('textbox', { name: 'What you call it' }).scrollIntoViewIfNeeded()
    },
  },
  {
    name: 'shelf-ticked',
    play: async (page) => {
      await open(page, '/shelf')
      await page
        .getByRole('checkbox', { name: /^tick .*-A$/ })
        .nth(1)
        .click()
      await page
        .getByRole('checkbox', { name: /^tick .*-A$/ })
        .nth(2)
        .click()
      await page.getByRole('region', { name: 'Ticked lots' }).getByRole('button', { name: 'Move' }).click()
    },
  },
]
