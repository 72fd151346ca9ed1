import type { ComponentType } from 'react'
import { type Message, message } from '../../db/messages/message.ts'
import { lettersOf, lotsOf } from '../shared/addresses.ts'
import { fetchedAhead } from './fetched-ahead.tsx'

/** The groups of the rail, which follow the keeper's day, and on which side of the one field each stands. */
export const RAIL = {
  table: 'before',
  shelf: 'before',
  season: 'after',
} as const

/** How each part that an address can carry is read. */
const CARRIED = {
  accessionId: Number,
  find: lettersOf,
  giftId: Number,
  growOutId: Number,
  id: Number,
  listId: Number,
  lotId: Number,
  lotIds: lotsOf,
  part: String,
  personId: Number,
  placeId: Number,
  recallId: Number,
} as const

type Carried = { readonly [N in keyof typeof CARRIED]?: ReturnType<(typeof CARRIED)[N]> }

/** Where a screen is reached: by a word on the rail, or from within another, under whose word it stands. */
type Reached =
  | { readonly rail: keyof typeof RAIL | 'end'; readonly under?: never }
  | { readonly under: `/${string}`; readonly rail?: never }

type Entry = Reached & {
  readonly path: `/${string}`
  /** Names it on the rail and in the title of the window. */
  readonly word: Message
  /** What its addresses carry after the path, as wouter's patterns; nothing where it is left out. */
  readonly addresses?: readonly string[]
  /** Fetches the screen, which takes what its addresses carry, by the names in {@link CARRIED}. */
  readonly fetch: () => Promise<ComponentType<Carried>>
}

/** Every screen there is; the rail has its words in this order. An address that fits none opens the shelf. */
const ENTRIES: readonly Entry[] = [
  {
    path: '/take-in',
    word: message('screen.take-in'),
    rail: 'table',
    fetch: async () => (await import('../screens/take-in/take-in-screen.tsx')).TakeInScreen,
  },
  {
    path: '/hand-out',
    word: message('screen.hand-out'),
    rail: 'table',
    fetch: async () => (await import('../screens/hand-out/hand-out-screen.tsx')).HandOutScreen,
  },
  {
    path: '/take-back',
    word: message('screen.take-back'),
    rail: 'table',
    fetch: async () => (await import('../screens/returns/returns-screen.tsx')).ReturnsScreen,
  },
  {
    path: '/shelf',
    word: message('screen.shelf'),
    rail: 'shelf',
    addresses: ['', '/lot/:lotId', '/find/:find'],
    fetch: async () => (await import('../screens/shelf/shelf-screen.tsx')).ShelfScreen,
  },
  {
    path: '/germination',
    word: message('screen.germination'),
    rail: 'shelf',
    addresses: ['/:part?/:id?'],
    fetch: async () => (await import('../screens/germination/germination-screen.tsx')).GerminationScreen,
  },
  {
    path: '/storage',
    word: message('screen.storage'),
    rail: 'shelf',
    addresses: ['/:part?/:id?'],
    fetch: async () => (await import('../screens/storage/storage-screen.tsx')).StorageScreen,
  },
  {
    path: '/regrow',
    word: message('screen.regrow'),
    rail: 'season',
    addresses: ['', '/need/:accessionId'],
    fetch: async () => (await import('../screens/regrow/regrow-screen.tsx')).RegrowScreen,
  },
  {
    path: '/print',
    word: message('screen.print'),
    rail: 'season',
    fetch: async () => (await import('../screens/print/print-screen.tsx')).PrintScreen,
  },
  {
    path: '/people',
    word: message('screen.people'),
    rail: 'season',
    addresses: ['/:personId?'],
    fetch: async () => (await import('../screens/people/people-screen.tsx')).PeopleScreen,
  },
  {
    path: '/settings',
    word: message('screen.settings'),
    rail: 'end',
    fetch: async () => (await import('../screens/settings/settings-screen.tsx')).SettingsScreen,
  },
  {
    path: '/take-in/waiting',
    word: message('screen.gifts-waiting'),
    under: '/take-in',
    addresses: ['/:giftId?'],
    fetch: async () => (await import('../screens/gifts-waiting/gifts-waiting-screen.tsx')).GiftsWaitingScreen,
  },
  {
    path: '/take-in/list',
    word: message('screen.from-a-list'),
    under: '/take-in',
    fetch: async () =>
      (await import('../screens/spreadsheet-import/spreadsheet-import-screen.tsx')).SpreadsheetImportScreen,
  },
  {
    path: '/hand-out/paper',
    word: message('screen.paper-sheet'),
    under: '/hand-out',
    fetch: async () => (await import('../screens/paper-sheet/paper-sheet-screen.tsx')).PaperSheetScreen,
  },
  {
    path: '/hand-out/institutions',
    word: message('screen.institutions'),
    under: '/hand-out',
    fetch: async () => (await import('../screens/institutions/institutions-screen.tsx')).InstitutionsScreen,
  },
  {
    path: '/regrow/plan',
    word: message('screen.season-plan'),
    under: '/regrow',
    fetch: async () => (await import('../screens/season-plan/season-plan-screen.tsx')).SeasonPlanScreen,
  },
  {
    path: '/regrow/season',
    word: message('screen.season-notes'),
    under: '/regrow',
    addresses: ['/:growOutId?'],
    fetch: async () => (await import('../screens/season-plan/season-notes-screen.tsx')).SeasonNotesScreen,
  },
  {
    path: '/regrow/lists',
    word: message('screen.season-lists'),
    under: '/regrow',
    addresses: ['/:listId?'],
    fetch: async () => (await import('../screens/regrow/season-lists-screen.tsx')).SeasonListsScreen,
  },
  {
    path: '/stocktake',
    word: message('screen.stocktake'),
    under: '/shelf',
    addresses: ['/:placeId?', '/lots/:lotIds'],
    fetch: async () => (await import('../screens/stocktake/stocktake-screen.tsx')).StocktakeScreen,
  },
  {
    path: '/trace',
    word: message('screen.trace'),
    under: '/shelf',
    addresses: ['', '/lot/:lotId', '/recall/:recallId'],
    fetch: async () => (await import('../screens/trace/trace-screen.tsx')).TraceScreen,
  },
  {
    path: '/in-and-out',
    word: message('screen.in-and-out'),
    under: '/settings',
    fetch: async () => (await import('../screens/import-export/import-export-screen.tsx')).ImportExportScreen,
  },
  {
    path: '/written',
    word: message('screen.written'),
    under: '/settings',
    fetch: async () => (await import('../screens/entry-log/entry-log-screen.tsx')).EntryLogScreen,
  },
]

export const SCREENS = ENTRIES.map((entry) => ({ ...entry, component: fetchedAhead(entry.fetch) }))

/** The screen that an address belongs to: the one with the longest path that it begins with. */
export function screenOf(location: string): (typeof SCREENS)[number] | undefined {
  return SCREENS.filter(({ path }) => location === path || location.startsWith(`${path}/`)).toSorted(
    (a, b) => b.path.length - a.path.length,
  )[0]
}

/** What the parts of an address say, read; a part that wouter also gives by its number is left to its name. */
export function readCarried(parts: Readonly<Record<string, string | undefined>>): Carried {
  const read = Object.entries(CARRIED).flatMap(([name, reading]) => {
    const part = parts[name]
    return part === undefined ? [] : [[name, reading(part)]]
  })
  return Object.fromEntries(read) as Carried
}
