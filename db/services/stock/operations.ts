import type { Handlers } from '../book/context.ts'
import { readTypedAmount } from './amount-reading.ts'
import { decideKeeping } from './decide-keeping.ts'
import { bringHome, changeDuplicate, listDuplicates } from './duplicates.ts'
import { changeInstitution, listInstitutions, recordReport } from './institutions.ts'
import { discardSeed, moveLots, quarantineLot, releaseLot } from './lot-care.ts'
import { endCaution, setCautionOfLots } from './lot-cautions.ts'
import { getLot } from './lot-record.ts'
import { listNeeds, overrideAccession } from './needs.ts'
import { letPromiseGo, listOut, listPromises } from './promises.ts'
import { weighSeeds } from './seed-weights.ts'
import { findAnything, listLots, offerLots } from './shelf.ts'
import { mergeLots, splitLot } from './split-and-merge.ts'
import { previewStocktake, recordStocktake, takeStock } from './stocktake.ts'
import { changeTerms } from './terms.ts'
import { previewWithdrawal, recordPaperSheet, recordWithdrawal } from './withdrawals.ts'

/** The operations that this room answers. */
export const stockOperations = {
  'withdrawal.list-open': listOut,
  'promise.list': listPromises,
  'amount.preview': readTypedAmount,
  'lot.list': listLots,
  'lot.get': getLot,
  'withdrawal.list-lots': offerLots,
  'collection.search': findAnything,
  'withdrawal.preview': previewWithdrawal,
  'stocktake.preview': previewStocktake,
  'accession.list-states': listNeeds,
  'promise.waive': letPromiseGo,
  'accession.change-policy': overrideAccession,
  'accession.change-terms': changeTerms,
  'accession.decide-keeping': decideKeeping,
  'withdrawal.record': recordWithdrawal,
  'lot.record-weight': weighSeeds,
  'lot.record-count': takeStock,
  'stocktake.record': recordStocktake,
  'paper-sheet.record': recordPaperSheet,
  'duplicate.list': listDuplicates,
  'duplicate.change': changeDuplicate,
  'duplicate.bring-home': bringHome,
  'institution.list': listInstitutions,
  'institution.change': changeInstitution,
  'institution.record-report': recordReport,
  'lot.split': splitLot,
  'lot.merge': mergeLots,
  'lot.move': moveLots,
  'lot.discard': discardSeed,
  'lot.quarantine': quarantineLot,
  'lot.release': releaseLot,
  'lot.set-caution': setCautionOfLots,
  'lot.end-caution': endCaution,
} satisfies Partial<Handlers>
