import type { Handlers } from '../book/context.ts'
import { comparePlaces } from './compare-places.ts'
import { noteMoisture, planLotDrying, readMoisture } from './lot-moisture.ts'
import { getLotStorage, noteContainer, previewMove } from './lot-storage.ts'
import { getStorage, listStorage } from './place-climate.ts'
import { changeKind, previewKind } from './place-kind.ts'
import { noteReading, setTerms } from './place-readings.ts'
import { importFile, previewFile } from './reading-file.ts'
import { listDueRounds, listRounds, recordRound } from './rounds.ts'

/** The operations that this room answers. */
export const storageOperations = {
  'place.preview-kind': previewKind,
  'storage.list': listStorage,
  'storage.get': getStorage,
  'storage.compare': comparePlaces,
  'reading.preview-file': previewFile,
  'lot.get-storage': getLotStorage,
  'round.list-due': listDueRounds,
  'round.list': listRounds,
  'moisture.preview': readMoisture,
  'moisture.plan-drying': planLotDrying,
  'lot.preview-move': previewMove,
  'place.change-kind': changeKind,
  'place.change-terms': setTerms,
  'reading.record': noteReading,
  'reading.import-file': importFile,
  'lot.change-container': noteContainer,
  'moisture.record': noteMoisture,
  'round.record': recordRound,
} satisfies Partial<Handlers>
