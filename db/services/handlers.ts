import type {
  KeepName,
  OperationName,
  ParsedInput,
  ReadName,
  Value,
  WriteName,
} from '../contract/contract.ts'
import { aboutCollection, revisionOf } from './about.ts'
import { readTypedAmount } from './amount-reading.ts'
import { backUpCollection, changeBackupKeeping, compareBackup } from './backups.ts'
import { printBenchSheet } from './bench-sheet.ts'
import { makeCataloguePage, printCatalogue } from './catalogue.ts'
import { joinPeople, updatePerson } from './change-person.ts'
import { checkCollection } from './check.ts'
import { comparePlaces } from './compare-places.ts'
import type { Reading, Writing } from './context.ts'
import { getCrop, listCrops } from './crops.ts'
import { makePackage, readPackageBack } from './data-package.ts'
import { keepDraft, listDrafts } from './drafts.ts'
import { listEntries, takeBackEntry } from './entries.ts'
import { getForecast } from './forecast-record.ts'
import { beginTest, cancelTest, countTest, finishTest, recordGermination } from './germination.ts'
import { listDueTests, planTest } from './germination-advice.ts'
import { getTest, listTests } from './germination-record.ts'
import { listGrowOuts, noteGrowOut } from './grow-outs.ts'
import { printGrowerSheets } from './grower-sheets.ts'
import { listSites, saveSite } from './growing-sites.ts'
import { recordIntake } from './intake.ts'
import { printKeepCards, printRuler } from './keep-cards.ts'
import { forecastsLeft, holdForecasts, refreshForecasts } from './keep-forecasts.ts'
import { keepSheet, listSheets, retireSheet } from './label-sheets.ts'
import { printLabels } from './labels.ts'
import { changeLetterWords, letterWords, previewLetter } from './letters.ts'
import { foreseeList, refusedRows, takeListIn } from './list-import.ts'
import { discardSeed, moveLots, quarantineLot, releaseLot } from './lot-care.ts'
import { exportLots, exportWorkbook, makeStock } from './lot-export.ts'
import { noteMoisture, planLotDrying, readMoisture } from './lot-moisture.ts'
import { getLot } from './lot-record.ts'
import { foreseeMove, getLotStorage, noteContainer } from './lot-storage.ts'
import { foreseeMoves } from './moves.ts'
import { listNeeds, overrideAccession } from './needs.ts'
import { correctCrop, createCrop, overrideCrop } from './own-crops.ts'
import { makeOccurrences, makePassports } from './passports.ts'
import { createPerson, searchPeople } from './people.ts'
import { listPeople } from './person-list.ts'
import { erasePerson, exportPerson } from './person-privacy.ts'
import { getPerson } from './person-record.ts'
import { getStorage, listStorage } from './place-climate.ts'
import { changeKind, foreseeKind } from './place-kind.ts'
import { noteReading, setTerms } from './place-readings.ts'
import { createPlace, listPlaces } from './places.ts'
import { markPrinted, printAgain, printHistory } from './printed.ts'
import { letPromiseGo, listOut, listPromises } from './promises.ts'
import { foreseeFile, importFile } from './reading-file.ts'
import { getNeed } from './regrow-need.ts'
import { rankedNeeds } from './regrow-needs.ts'
import { recordReturn } from './returns.ts'
import { printRoundSheet } from './round-sheet.ts'
import { listDueRounds, listRounds, recordRound } from './rounds.ts'
import { getSeasonList, listSeasonLists, saveSeasonList } from './season-lists.ts'
import { checkPlan, latestPlan, makePlan, savePlan } from './season-plan.ts'
import { weighSeeds } from './seed-weights.ts'
import { changeSettings } from './settings.ts'
import { findAnything, listLots, offerLots } from './shelf.ts'
import { spellCost } from './spell-cost.ts'
import { joinLots, splitLot } from './split-and-join.ts'
import { foreseeStocktake, recordStocktake, takeStock } from './stocktake.ts'
import { printStocktakeSheet } from './stocktake-sheet.ts'
import { addToTray, changeTrayItem, removeFromTray } from './tray.ts'
import { listTray } from './tray-list.ts'
import { previewTray } from './tray-preview.ts'
import { addSynonym, createVariety, searchVarieties } from './varieties.ts'
import { acceptGift, declineGift, listGifts, noteStep, offerGift } from './waiting-gifts.ts'
import { foreseeWithdrawal, recordPaperSheet, recordWithdrawal } from './withdrawals.ts'
import { printYearReport } from './year-report.ts'

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
  'passport.make': makePassports,
  'occurrence.make': makeOccurrences,
  'stock.make': makeStock,
  'list.refused': refusedRows,
  'lot.storage': getLotStorage,
  'round.due': listDueRounds,
  'round.list': listRounds,
  'round.sheet': printRoundSheet,
  'moisture.read': readMoisture,
  'drying.plan': planLotDrying,
  'lot.foresee-move': foreseeMove,
  'germination.plan': planTest,
  'germination.list': listTests,
  'germination.get': getTest,
  'germination.due': listDueTests,
  'germination.sheet': printBenchSheet,
  'regrow.needs': rankedNeeds,
  'regrow.get': getNeed,
  'site.list': listSites,
  'plan.make': makePlan,
  'plan.check': checkPlan,
  'plan.latest': latestPlan,
  'plan.sheets': printGrowerSheets,
  'grow-out.list': listGrowOuts,
  'season-list.list': listSeasonLists,
  'season-list.get': getSeasonList,
  'label.sheets': listSheets,
  'label.print': printLabels,
  'keep-card.print': printKeepCards,
  'ruler.print': printRuler,
  'stocktake.sheet': printStocktakeSheet,
  'catalogue.print': printCatalogue,
  'catalogue.page': makeCataloguePage,
  'year.report': printYearReport,
  'tray.list': listTray,
  'tray.preview': previewTray,
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
  'tray.change': changeTrayItem,
  'tray.remove': removeFromTray,
  'tray.mark-printed': markPrinted,
  'print.again': printAgain,
  'label-sheet.keep': keepSheet,
  'label-sheet.retire': retireSheet,
  'letter.change-words': changeLetterWords,
}
