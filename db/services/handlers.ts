import type {
  OperationName,
  ParsedInput,
  ReadName,
  SaveName,
  Value,
  WriteName,
} from '../contract/contract.ts'
import type { Reading, Writing } from './book/context.ts'
import { listSheets, retireSheet, saveSheet } from './book/label-sheets.ts'
import { createPerson, searchPeople } from './book/people.ts'
import { createPlace, listPlaces } from './book/places.ts'
import { changeSettings } from './book/settings.ts'
import { addToTray, changeTrayItem, removeFromTray } from './book/tray.ts'
import { aboutCollection, revisionOf } from './collection/about.ts'
import { backUpCollection, changeBackupRule } from './collection/backups.ts'
import { checkCollection } from './collection/check.ts'
import { compareBackup } from './collection/compare-backup.ts'
import { getCrop, listCrops } from './collection/crops.ts'
import { listDrafts, saveDraft } from './collection/drafts.ts'
import { mergeVarieties } from './collection/merge-varieties.ts'
import { correctCrop, createCrop, overrideCrop } from './collection/own-crops.ts'
import { addSynonym, createVariety, searchVarieties } from './collection/varieties.ts'
import { listEntries, undoEntry } from './entry-log/entries.ts'
import { makePackage, readPackageBack } from './exchange/data-package.ts'
import { previewList, refusedRows, takeListIn } from './exchange/list-import.ts'
import { exportLots, exportWorkbook, makeStock } from './exchange/lot-export.ts'
import { makeOccurrences, makePassports } from './exchange/passports.ts'
import { excursionCost } from './forecast/excursion-cost.ts'
import { getForecast } from './forecast/forecast-record.ts'
import { previewMoves } from './forecast/moves.ts'
import { forecastsLeft, holdForecasts, refreshForecasts } from './forecast/save-forecasts.ts'
import { beginTest, cancelTest, countTest, finishTest, recordGermination } from './germination/germination.ts'
import { listDueTests, planTest } from './germination/germination-advice.ts'
import { getTest, listTests } from './germination/germination-record.ts'
import { recordIntake } from './intake/intake.ts'
import { recordReturn } from './intake/returns.ts'
import { acceptGift, declineGift, listGifts, noteStep, offerGift } from './intake/waiting-gifts.ts'
import { mergePeople, updatePerson } from './people/change-person.ts'
import { namesGoingOut } from './people/names-going-out.ts'
import { listPeople } from './people/person-list.ts'
import { erasePerson, exportPerson, personTraces } from './people/person-privacy.ts'
import { getPerson } from './people/person-record.ts'
import { changeLetterWords, letterWords, previewLetter } from './print/letters.ts'
import { addPeriodLetters } from './print/period-letters.ts'
import { markPrinted, printAgain, printHistory } from './print/printed.ts'
import { listTray } from './print/tray-list.ts'
import { listGrowOuts, noteGrowOut } from './regrow/grow-outs.ts'
import { listSites, saveSite } from './regrow/growing-sites.ts'
import { getNeed } from './regrow/regrow-need.ts'
import { rankedNeeds } from './regrow/regrow-needs.ts'
import { getSeasonList, listSeasonLists, saveSeasonList } from './regrow/season-lists.ts'
import { checkPlan, latestPlan, makePlan, savePlan } from './regrow/season-plan.ts'
import { readTypedAmount } from './stock/amount-reading.ts'
import { discardSeed, moveLots, quarantineLot, releaseLot } from './stock/lot-care.ts'
import { getLot } from './stock/lot-record.ts'
import { listNeeds, overrideAccession } from './stock/needs.ts'
import { letPromiseGo, listOut, listPromises } from './stock/promises.ts'
import { weighSeeds } from './stock/seed-weights.ts'
import { findAnything, listLots, offerLots } from './stock/shelf.ts'
import { mergeLots, splitLot } from './stock/split-and-merge.ts'
import { previewStocktake, recordStocktake, takeStock } from './stock/stocktake.ts'
import { previewWithdrawal, recordPaperSheet, recordWithdrawal } from './stock/withdrawals.ts'
import { comparePlaces } from './storage/compare-places.ts'
import { noteMoisture, planLotDrying, readMoisture } from './storage/lot-moisture.ts'
import { getLotStorage, noteContainer, previewMove } from './storage/lot-storage.ts'
import { getStorage, listStorage } from './storage/place-climate.ts'
import { changeKind, previewKind } from './storage/place-kind.ts'
import { noteReading, setTerms } from './storage/place-readings.ts'
import { importFile, previewFile } from './storage/reading-file.ts'
import { listDueRounds, listRounds, recordRound } from './storage/rounds.ts'

/** The operations that change which collection is open: the host's to do. */
export type HostName = Extract<
  OperationName,
  'collection.create' | 'collection.open-demo' | 'backup.list' | 'backup.restore'
>

type ReadHandlers = {
  readonly [N in Exclude<ReadName, HostName>]: (
    reading: Reading,
    input: ParsedInput<N>,
  ) => Value<N> | Promise<Value<N>>
}

/** A write answers its own facts and what was done; the entry's id is added by whoever runs it. */
type WriteHandlers = {
  readonly [N in Exclude<WriteName, HostName>]: (
    writing: Writing,
    input: ParsedInput<N>,
  ) => Omit<Value<N>, 'entryId'>
}

type SaveHandlers = {
  readonly [N in SaveName]: (reading: Reading, input: ParsedInput<N>) => Value<N>
}

export const saveHandlers: SaveHandlers = {
  'draft.save': saveDraft,
  'forecast.refresh': refreshForecasts,
  'forecast.pause': holdForecasts,
  'package.import': readPackageBack,
}

// What draws paper is half of all there is to load, so a service that prints is loaded by its first call.
export const readHandlers: ReadHandlers = {
  'collection.get': aboutCollection,
  'collection.check': checkCollection,
  'backup.create': backUpCollection,
  'backup.compare': compareBackup,
  'entry.list': listEntries,
  'crop.list': listCrops,
  'crop.get': getCrop,
  'variety.search': searchVarieties,
  'person.search': searchPeople,
  'person.list': listPeople,
  'person.get': getPerson,
  'person.export': exportPerson,
  'person.list-traces': personTraces,
  'withdrawal.list-open': listOut,
  'promise.list': listPromises,
  'place.list': listPlaces,
  'place.preview-kind': previewKind,
  'place.preview-moves': previewMoves,
  'place.get-excursion-cost': excursionCost,
  'gift.list': listGifts,
  'amount.preview': readTypedAmount,
  'draft.list': listDrafts,
  'lot.list': listLots,
  'lot.export': exportLots,
  'lot.workbook': exportWorkbook,
  'lot.get': getLot,
  'withdrawal.list-lots': offerLots,
  'collection.search': findAnything,
  'withdrawal.preview': previewWithdrawal,
  'stocktake.preview': previewStocktake,
  'collection.get-revision': revisionOf,
  'forecast.get': getForecast,
  'forecast.get-progress': forecastsLeft,
  'accession.list-states': listNeeds,
  'storage.list': listStorage,
  'storage.get': getStorage,
  'storage.compare': comparePlaces,
  'reading.preview-file': previewFile,
  'import.preview': previewList,
  'package.export': makePackage,
  'person.list-names-in-texts': namesGoingOut,
  'passport.export': makePassports,
  'occurrence.export': makeOccurrences,
  'stock.export': makeStock,
  'import.list-refused': refusedRows,
  'lot.get-storage': getLotStorage,
  'round.list-due': listDueRounds,
  'round.list': listRounds,
  'round.print': (reading, input) =>
    import('./print/round-sheet.ts').then((room) => room.printRoundSheet(reading, input)),
  'moisture.preview': readMoisture,
  'moisture.plan-drying': planLotDrying,
  'lot.preview-move': previewMove,
  'germination.plan': planTest,
  'germination.list': listTests,
  'germination.get': getTest,
  'germination.list-due': listDueTests,
  'germination.print': (reading, input) =>
    import('./print/bench-sheet.ts').then((room) => room.printBenchSheet(reading, input)),
  'regeneration.list': rankedNeeds,
  'regeneration.get': getNeed,
  'site.list': listSites,
  'season-plan.preview': makePlan,
  'season-plan.check': checkPlan,
  'season-plan.get': latestPlan,
  'season-plan.print': (reading, input) =>
    import('./print/grower-sheets.ts').then((room) => room.printGrowerSheets(reading, input)),
  'grow-out.list': listGrowOuts,
  'season-list.list': listSeasonLists,
  'season-list.get': getSeasonList,
  'label-sheet.list': listSheets,
  'label.print': (reading, input) =>
    import('./print/labels.ts').then((room) => room.printLabels(reading, input)),
  'keep-card.print': (reading, input) =>
    import('./print/storage-cards.ts').then((room) => room.printStorageCards(reading, input)),
  'ruler.print': (reading, input) =>
    import('./print/storage-cards.ts').then((room) => room.printRuler(reading, input)),
  'stocktake.sheet': (reading, input) =>
    import('./print/stocktake-sheet.ts').then((room) => room.printStocktakeSheet(reading, input)),
  'catalogue.print': (reading) => import('./print/catalogue.ts').then((room) => room.printCatalogue(reading)),
  'catalogue.export': (reading) =>
    import('./print/catalogue.ts').then((room) => room.makeCataloguePage(reading)),
  'report.print': (reading, input) =>
    import('./print/year-report.ts').then((room) => room.printYearReport(reading, input)),
  'tray.list': listTray,
  'tray.render': (reading, input) =>
    import('./print/tray-preview.ts').then((room) => room.previewTray(reading, input)),
  'print.list': printHistory,
  'letter.get': letterWords,
  'letter.render': previewLetter,
}

export const writeHandlers: WriteHandlers = {
  'settings.change': changeSettings,
  'backup.change-rule': changeBackupRule,
  'entry.undo': undoEntry,
  'crop.change-policy': overrideCrop,
  'crop.create': createCrop,
  'crop.change': correctCrop,
  'variety.create': createVariety,
  'variety.add-name': addSynonym,
  'person.create': createPerson,
  'person.change': updatePerson,
  'person.merge': mergePeople,
  'variety.merge': mergeVarieties,
  'person.erase': erasePerson,
  'promise.waive': letPromiseGo,
  'place.create': createPlace,
  'place.change-kind': changeKind,
  'intake.record': recordIntake,
  'return.record': recordReturn,
  'accession.change-policy': overrideAccession,
  'season-list.create': saveSeasonList,
  'site.change': saveSite,
  'season-plan.create': savePlan,
  'grow-out.record': noteGrowOut,
  'withdrawal.record': recordWithdrawal,
  'gift.offer': offerGift,
  'gift.record-step': noteStep,
  'gift.decline': declineGift,
  'gift.accept': acceptGift,
  'lot.record-weight': weighSeeds,
  'lot.record-count': takeStock,
  'stocktake.record': recordStocktake,
  'paper-sheet.record': recordPaperSheet,
  'lot.split': splitLot,
  'lot.merge': mergeLots,
  'lot.move': moveLots,
  'lot.discard': discardSeed,
  'lot.quarantine': quarantineLot,
  'lot.release': releaseLot,
  'place.change-terms': setTerms,
  'reading.record': noteReading,
  'reading.import-file': importFile,
  'import.record': takeListIn,
  'lot.change-container': noteContainer,
  'moisture.record': noteMoisture,
  'round.record': recordRound,
  'germination.record': recordGermination,
  'germination.start': beginTest,
  'germination.record-count': countTest,
  'germination.finish': finishTest,
  'germination.cancel': cancelTest,
  'tray.add': addToTray,
  'tray.add-letters': addPeriodLetters,
  'tray.change': changeTrayItem,
  'tray.remove': removeFromTray,
  'tray.mark-printed': markPrinted,
  'print.repeat': printAgain,
  'label-sheet.create': saveSheet,
  'label-sheet.retire': retireSheet,
  'letter.change': changeLetterWords,
}
