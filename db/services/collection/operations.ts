import type { Handlers } from '../book/context.ts'
import { aboutCollection, revisionOf } from './about.ts'
import { backUpCollection, changeBackupRule } from './backups.ts'
import { checkCollection } from './check.ts'
import { compareBackup } from './compare-backup.ts'
import { getCrop, listCrops } from './crops.ts'
import { listDrafts, saveDraft } from './drafts.ts'
import { fireSheetStanding, markFireSheetPrinted } from './fire-sheet-due.ts'
import { mergeVarieties } from './merge-varieties.ts'
import { correctCrop, createCrop, overrideCrop } from './own-crops.ts'
import { addSynonym, createVariety, searchVarieties } from './varieties.ts'

/** The operations that this room answers. */
export const collectionOperations = {
  'draft.save': saveDraft,
  'collection.get': aboutCollection,
  'collection.check': checkCollection,
  'backup.create': backUpCollection,
  'fire-sheet.get': fireSheetStanding,
  'fire-sheet.mark-printed': markFireSheetPrinted,
  'backup.compare': compareBackup,
  'crop.list': listCrops,
  'crop.get': getCrop,
  'variety.search': searchVarieties,
  'draft.list': listDrafts,
  'collection.get-revision': revisionOf,
  'backup.change-rule': changeBackupRule,
  'crop.change-policy': overrideCrop,
  'crop.create': createCrop,
  'crop.change': correctCrop,
  'variety.create': createVariety,
  'variety.add-name': addSynonym,
  'variety.merge': mergeVarieties,
} satisfies Partial<Handlers>
