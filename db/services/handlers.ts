import type {
  KeepName,
  OperationName,
  ParsedInput,
  ReadName,
  Value,
  WriteName,
} from '../contract/contract.ts'
import { aboutCollection, revisionOf } from './collection/about.ts'
import { backUpCollection, changeBackupKeeping } from './collection/backups.ts'
import { checkCollection } from './collection/check.ts'
import { compareBackup } from './collection/compare-backup.ts'
import { getCrop, listCrops } from './collection/crops.ts'
import { keepDraft, listDrafts } from './collection/drafts.ts'
import { listEntries, takeBackEntry } from './collection/entries.ts'
import { joinVarieties } from './collection/join-varieties.ts'
import { correctCrop, createCrop, overrideCrop } from './collection/own-crops.ts'
import { changeSettings } from './collection/settings.ts'
import { addSynonym, createVariety, searchVarieties } from './collection/varieties.ts'
import type { Reading, Writing } from './context.ts'
import { makePackage, readPackageBack } from './exchange/data-package.ts'
import { foreseeList, refusedRows, takeListIn } from './exchange/list-import.ts'
import { makeOccurrences, makePassports } from './exchange/passports.ts'
import { getForecast } from './forecast/forecast-record.ts'
import { forecastsLeft, holdForecasts, refreshForecasts } from './forecast/keep-forecasts.ts'
import { foreseeMoves } from './forecast/moves.ts'
import { beginTest, cancelTest, countTest, finishTest, recordGermination } from './germination/germination.ts'
import { listDueTests, planTest } from './germination/germination-advice.ts'
import { getTest, listTests } from './germination/germination-record.ts'
import { recordIntake } from './intake/intake.ts'
import { recordReturn } from './intake/returns.ts'
import { acceptGift, declineGift, listGifts, noteStep, offerGift } from './intake/waiting-gifts.ts'
import { joinPeople, updatePerson } from './people/change-person.ts'
import { namesGoingOut } from './people/names-going-out.ts'
import { createPerson, searchPeople } from './people/people.ts'
import { listPeople } from './people/person-list.ts'
import { erasePerson, exportPerson, personTraces } from './people/person-privacy.ts'
import { getPerson } from './people/person-record.ts'
import { keepSheet, listSheets, retireSheet } from './print/label-sheets.ts'
import { changeLetterWords, letterWords, previewLetter } from './print/letters.ts'
import { addPeriodLetters } from './print/period-letters.ts'
import { markPrinted, printAgain, printHistory } from './print/printed.ts'
import { addToTray, changeTrayItem, removeFromTray } from './print/tray.ts'
import { listTray } from './print/tray-list.ts'
import { listGrowOuts, noteGrowOut } from './regrow/grow-outs.ts'
import { listSites, saveSite } from './regrow/growing-sites.ts'
import { getNeed } from './regrow/regrow-need.ts'
import { rankedNeeds } from './regrow/regrow-needs.ts'
import { getSeasonList, listSeasonLists, saveSeasonList } from './regrow/season-lists.ts'
import { checkPlan, latestPlan, makePlan, savePlan } from './regrow/season-plan.ts'
import { readTypedAmount } from './stock/amount-reading.ts'
import { discardSeed, moveLots, quarantineLot, releaseLot } from './stock/lot-care.ts'
import { exportLots, exportWorkbook, makeStock } from './stock/lot-export.ts'
import { getLot } from './stock/lot-record.ts'
import { listNeeds, overrideAccession } from './stock/needs.ts'
import { letPromiseGo, listOut, listPromises } from './stock/promises.ts'
import { weighSeeds } from './stock/seed-weights.ts'
import { findAnything, listLots, offerLots } from './stock/shelf.ts'
import { joinLots, splitLot } from './stock/split-and-join.ts'
import { foreseeStocktake, recordStocktake, takeStock } from './stock/stocktake.ts'
import { foreseeWithdrawal, recordPaperSheet, recordWithdrawal } from './stock/withdrawals.ts'
import { comparePlaces } from './storage/compare-places.ts'
import { noteMoisture, planLotDrying, readMoisture } from './storage/lot-moisture.ts'
import { foreseeMove, getLotStorage, noteContainer } from './storage/lot-storage.ts'
import { getStorage, listStorage } from './storage/place-climate.ts'
import { changeKind, foreseeKind } from './storage/place-kind.ts'
import { noteReading, setTerms } from './storage/place-readings.ts'
import { createPlace, listPlaces } from './storage/places.ts'
import { foreseeFile, importFile } from './storage/reading-file.ts'
import { listDueRounds, listRounds, recordRound } from './storage/rounds.ts'
import { spellCost } from './storage/spell-cost.ts'

/** The operations that change which collection is open: the host's to do. */
export type HostName = Extract<
  OperationName,
  'collection.start' | 'collection.open-demo' | 'backup.list' | 'backup.restore'
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

type KeepHandlers = {
  readonly [N in KeepName]: (reading: Reading, input: ParsedInput<N>) => Value<N>
}

export const keepHandlers: KeepHandlers = {
  'draft.keep': keepDraft,
  'forecast.refresh': refreshForecasts,
  'forecast.hold': holdForecasts,
  'package.read-back': readPackageBack,
}

// What draws paper is half of all there is to load, so a service that prints is loaded by its first call.
export const readHandlers: ReadHandlers = {
  'collection.about': aboutCollection,
  'collection.check': checkCollection,
  'collection.back-up': backUpCollection,
  'backup.compare': compareBackup,
  'entry.list': listEntries,
  'crop.list': listCrops,
  'crop.get': getCrop,
  'variety.search': searchVarieties,
  'person.search': searchPeople,
  'person.list': listPeople,
  'person.get': getPerson,
  'person.export': exportPerson,
  'person.traces': personTraces,
  'withdrawal.out': listOut,
  'promise.list': listPromises,
  'place.list': listPlaces,
  'place.foresee-kind': foreseeKind,
  'place.foresee-moves': foreseeMoves,
  'place.spell-cost': spellCost,
  'gift.list': listGifts,
  'amount.read': readTypedAmount,
  'draft.list': listDrafts,
  'lot.list': listLots,
  'lot.export': exportLots,
  'lot.workbook': exportWorkbook,
  'lot.get': getLot,
  'lot.offer': offerLots,
  'find.anything': findAnything,
  'withdrawal.foresee': foreseeWithdrawal,
  'stocktake.foresee': foreseeStocktake,
  'collection.revision': revisionOf,
  'forecast.get': getForecast,
  'forecast.left': forecastsLeft,
  'need.list': listNeeds,
  'storage.list': listStorage,
  'storage.get': getStorage,
  'storage.compare': comparePlaces,
  'readings.foresee-file': foreseeFile,
  'list.foresee': foreseeList,
  'package.make': makePackage,
  'name.list': namesGoingOut,
  'passport.make': makePassports,
  'occurrence.make': makeOccurrences,
  'stock.make': makeStock,
  'list.refused': refusedRows,
  'lot.storage': getLotStorage,
  'round.due': listDueRounds,
  'round.list': listRounds,
  'round.sheet': (reading, input) =>
    import('./print/round-sheet.ts').then((room) => room.printRoundSheet(reading, input)),
  'moisture.read': readMoisture,
  'drying.plan': planLotDrying,
  'lot.foresee-move': foreseeMove,
  'germination.plan': planTest,
  'germination.list': listTests,
  'germination.get': getTest,
  'germination.due': listDueTests,
  'germination.sheet': (reading, input) =>
    import('./print/bench-sheet.ts').then((room) => room.printBenchSheet(reading, input)),
  'regrow.needs': rankedNeeds,
  'regrow.get': getNeed,
  'site.list': listSites,
  'plan.make': makePlan,
  'plan.check': checkPlan,
  'plan.latest': latestPlan,
  'plan.sheets': (reading, input) =>
    import('./print/grower-sheets.ts').then((room) => room.printGrowerSheets(reading, input)),
  'grow-out.list': listGrowOuts,
  'season-list.list': listSeasonLists,
  'season-list.get': getSeasonList,
  'label.sheets': listSheets,
  'label.print': (reading, input) =>
    import('./print/labels.ts').then((room) => room.printLabels(reading, input)),
  'keep-card.print': (reading, input) =>
    import('./print/keep-cards.ts').then((room) => room.printKeepCards(reading, input)),
  'ruler.print': (reading, input) =>
    import('./print/keep-cards.ts').then((room) => room.printRuler(reading, input)),
  'stocktake.sheet': (reading, input) =>
    import('./print/stocktake-sheet.ts').then((room) => room.printStocktakeSheet(reading, input)),
  'catalogue.print': (reading) => import('./print/catalogue.ts').then((room) => room.printCatalogue(reading)),
  'catalogue.page': (reading) =>
    import('./print/catalogue.ts').then((room) => room.makeCataloguePage(reading)),
  'year.report': (reading, input) =>
    import('./print/year-report.ts').then((room) => room.printYearReport(reading, input)),
  'tray.list': listTray,
  'tray.preview': (reading, input) =>
    import('./print/tray-preview.ts').then((room) => room.previewTray(reading, input)),
  'print.history': printHistory,
  'letter.words': letterWords,
  'letter.preview': previewLetter,
}

export const writeHandlers: WriteHandlers = {
  'collection.change-settings': changeSettings,
  'backup.change-keeping': changeBackupKeeping,
  'entry.take-back': takeBackEntry,
  'crop.override': overrideCrop,
  'crop.create': createCrop,
  'crop.correct': correctCrop,
  'variety.create': createVariety,
  'variety.add-synonym': addSynonym,
  'person.create': createPerson,
  'person.update': updatePerson,
  'person.join': joinPeople,
  'variety.join': joinVarieties,
  'person.erase': erasePerson,
  'promise.let-go': letPromiseGo,
  'place.create': createPlace,
  'place.change-kind': changeKind,
  'intake.record': recordIntake,
  'return.record': recordReturn,
  'accession.override': overrideAccession,
  'season-list.save': saveSeasonList,
  'site.save': saveSite,
  'plan.save': savePlan,
  'grow-out.note': noteGrowOut,
  'withdrawal.record': recordWithdrawal,
  'gift.offer': offerGift,
  'gift.note-step': noteStep,
  'gift.decline': declineGift,
  'gift.accept': acceptGift,
  'lot.weigh-seeds': weighSeeds,
  'lot.take-stock': takeStock,
  'stocktake.record': recordStocktake,
  'paper-sheet.record': recordPaperSheet,
  'lot.split': splitLot,
  'lot.join': joinLots,
  'lot.move': moveLots,
  'lot.discard': discardSeed,
  'lot.quarantine': quarantineLot,
  'lot.release': releaseLot,
  'place.set-terms': setTerms,
  'reading.note': noteReading,
  'readings.import-file': importFile,
  'list.take-in': takeListIn,
  'lot.note-container': noteContainer,
  'moisture.note': noteMoisture,
  'round.record': recordRound,
  'germination.record': recordGermination,
  'germination.begin': beginTest,
  'germination.count': countTest,
  'germination.finish': finishTest,
  'germination.cancel': cancelTest,
  'tray.add': addToTray,
  'tray.add-letters': addPeriodLetters,
  'tray.change': changeTrayItem,
  'tray.remove': removeFromTray,
  'tray.mark-printed': markPrinted,
  'print.again': printAgain,
  'label-sheet.keep': keepSheet,
  'label-sheet.retire': retireSheet,
  'letter.change-words': changeLetterWords,
}
