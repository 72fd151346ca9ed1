import type { RunningApp } from './running-app.ts'

/** Cards that have buttons of their own, by what they are of. */
export const CARDS = {
  lot: async (app: RunningApp) => {
    const { rows } = await app.call('lot.list', { sort: 'count', descending: true })
    return `/shelf/lot/${rows[0]?.lotId}`
  },
  'lot kept back': async (app: RunningApp) => {
    const { rows } = await app.call('lot.list', { quarantined: true })
    const { returns } = await app.call('return.list-to-check', {})
    const kept = rows.find((row) => returns.every(({ lotId }) => lotId !== row.lotId))
    return `/shelf/lot/${kept?.lotId}`
  },
  gift: async (app: RunningApp) => {
    const { gifts } = await app.call('gift.list', {})
    return `/take-in/waiting/${gifts[0]?.giftId}`
  },
  test: async (app: RunningApp) => {
    const { tests } = await app.call('germination.list', {})
    return `/germination/test/${tests[0]?.testId}`
  },
  'lot to be tested': async (app: RunningApp) => {
    const { rows } = await app.call('lot.list', { sort: 'count', descending: true })
    return `/germination/lot/${rows[0]?.lotId}`
  },
  'measured place': async (app: RunningApp) => {
    const { places } = await app.call('storage.list', {})
    return `/storage/place/${places.find(({ latest }) => latest !== null)?.placeId}`
  },
} as const
