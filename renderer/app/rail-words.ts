export interface RailWord {
  readonly path: string
  readonly word: string
}

export interface RailGroup {
  readonly name: string
  /** On which side of the one field it stands. */
  readonly side: 'before' | 'after'
  readonly words: readonly RailWord[]
}

/** The rail, in groups that follow the keeper's day. Only what is there is named. */
export const RAIL_GROUPS: readonly RailGroup[] = [
  {
    name: 'at the table',
    side: 'before',
    words: [
      { path: '/take-in', word: 'Take in' },
      { path: '/hand-out', word: 'Hand out' },
      { path: '/take-back', word: 'Take back' },
    ],
  },
  {
    name: 'on the shelf',
    side: 'before',
    words: [
      { path: '/shelf', word: 'Shelf' },
      { path: '/germination', word: 'Germination' },
      { path: '/storage', word: 'Storage' },
    ],
  },
  {
    name: 'for the season',
    side: 'after',
    words: [
      { path: '/regrow', word: 'Regrow' },
      { path: '/print', word: 'Print' },
      { path: '/people', word: 'People' },
    ],
  },
]

export const SETTINGS_WORD: RailWord = { path: '/settings', word: 'Settings' }

const SHELF_WORD: RailWord = { path: '/shelf', word: 'Shelf' }

/** A screen reached from within another, whose word on the rail it stands under. */
interface ScreenWithin extends RailWord {
  readonly within: string
}

const SCREENS_WITHIN: readonly ScreenWithin[] = [
  { path: '/take-in/waiting', word: 'Gifts waiting', within: '/take-in' },
  { path: '/take-in/list', word: 'From a list', within: '/take-in' },
  { path: '/hand-out/paper', word: 'Paper sheet', within: '/hand-out' },
  { path: '/regrow/plan', word: 'Season plan', within: '/regrow' },
  { path: '/regrow/season', word: 'Season notes', within: '/regrow' },
  { path: '/regrow/lists', word: 'Season lists', within: '/regrow' },
  { path: '/in-and-out', word: 'In and out', within: '/settings' },
  { path: '/written', word: 'What was written', within: '/settings' },
  { path: '/stocktake', word: 'Stocktake', within: '/shelf' },
]

/** The screen that an address belongs to; an unknown address opens the shelf. */
export function screenOf(location: string): RailWord {
  const words = [...SCREENS_WITHIN, ...RAIL_GROUPS.flatMap((group) => group.words), SETTINGS_WORD]
  return words.find((word) => location === word.path || location.startsWith(`${word.path}/`)) ?? SHELF_WORD
}

/** The path of the rail's word under which a screen stands. */
export function railPathOf(screen: RailWord): string {
  return SCREENS_WITHIN.find(({ path }) => path === screen.path)?.within ?? screen.path
}
