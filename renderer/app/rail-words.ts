export interface RailWord {
  readonly path: string
  readonly word: string
}

export interface RailGroup {
  readonly name: string
  readonly words: readonly RailWord[]
}

/** The rail, in groups that follow the keeper's day. Only what is there is named. */
export const RAIL_GROUPS: readonly RailGroup[] = [
  {
    name: 'at the table',
    words: [
      { path: '/take-in', word: 'Take in' },
      { path: '/hand-out', word: 'Hand out' },
    ],
  },
  { name: 'on the shelf', words: [{ path: '/shelf', word: 'Shelf' }] },
]

export const SETTINGS_WORD: RailWord = { path: '/settings', word: 'Settings' }

const SHELF_WORD: RailWord = { path: '/shelf', word: 'Shelf' }

/** The screen that an address belongs to; an unknown address opens the shelf. */
export function screenOf(location: string): RailWord {
  const words = [...RAIL_GROUPS.flatMap((group) => group.words), SETTINGS_WORD]
  return words.find((word) => location === word.path || location.startsWith(`${word.path}/`)) ?? SHELF_WORD
}
