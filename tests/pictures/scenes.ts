import type { Page } from '@playwright/test'
import { open } from '../app/support/open.ts'
import type { RunningApp } from '../app/support/running-app.ts'

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

export const SCENES: readonly Scene[] = [
  { name: 'take-in', play: at('/take-in') },
  { name: 'hand-out', play: at('/hand-out') },
  { name: 'shelf', play: at('/shelf') },
  {
    name: 'record',
    play: async (page, app) => open(page, `/shelf/lot/${await lotOf(app, 'well-stocked')}`),
  },
  {
    name: 'record-rescue',
    play: async (page, app) => open(page, `/shelf/lot/${await lotOf(app, 'rescue')}`),
  },
  { name: 'settings', play: at('/settings') },
]
