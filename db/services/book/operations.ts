import type { Handlers } from './context.ts'
import { listSheets, retireSheet, saveSheet } from './label-sheets.ts'
import { createPerson, searchPeople } from './people.ts'
import { createPlace, listPlaces } from './places.ts'
import { changeSettings } from './settings.ts'
import { addToTray, changeTrayItem, removeFromTray } from './tray.ts'

/** The operations that this room answers. */
export const bookOperations = {
  'person.search': searchPeople,
  'place.list': listPlaces,
  'label-sheet.list': listSheets,
  'settings.change': changeSettings,
  'person.create': createPerson,
  'place.create': createPlace,
  'tray.add': addToTray,
  'tray.change': changeTrayItem,
  'tray.remove': removeFromTray,
  'label-sheet.create': saveSheet,
  'label-sheet.retire': retireSheet,
} satisfies Partial<Handlers>
