import { OWN_SHEET } from '../../../builders/own-sheet.ts'
import { key, lot, type Step, step } from './step.ts'

/** People and varieties are put right, paper is printed, and the collection is backed up. */
export function paper(): readonly Step[] {
  return [
    step('person.change', (facts) => ({ ...key(), personId: facts.personId, mayWrite: true })),
    step('person.merge', (facts) => ({ ...key(), keepId: facts.personId, joinId: facts.memberId })),
    step(
      'variety.create',
      () => ({ ...key(), cropId: 'pea', name: 'Lane Peas' }),
      (facts, value) => {
        facts.otherVarietyId = value.varietyId
      },
    ),
    step('variety.merge', (facts) => ({
      ...key(),
      keepId: facts.varietyId,
      joinId: facts.otherVarietyId,
    })),
    step('person.list', () => ({ text: 'ash' })),
    step('person.get', (facts) => ({ personId: facts.personId })),
    step('label-sheet.list', () => ({})),
    step('label-sheet.create', () => ({
      ...key(),
      measures: OWN_SHEET,
    })),
    step('label-sheet.retire', () => ({ ...key(), sheetId: 1 })),
    step('keep-card.print', (facts) => ({ lotIds: [lot(facts, 0)] })),
    step('ruler.print', () => ({})),
    step('stocktake.sheet', () => ({})),
    step('catalogue.print', () => ({})),
    step('catalogue.export', () => ({})),
    step('report.print', () => ({ year: 2026 })),
    step('label.print', (facts) => ({ labels: [{ lotId: lot(facts, 0) }], sheet: 'a4-21' })),
    step('tray.list', () => ({})),
    step('letter.get', () => ({})),
    step('letter.change', () => ({ ...key(), words: 'Thank you, {donor}.', keeper: 'Ansa Reed' })),
    step('letter.render', () => ({ words: 'Thank you, {donor}.', keeper: '' })),
    step(
      'tray.add',
      (facts) => ({ ...key(), items: [{ kind: 'label', lotId: lot(facts, 0), copies: 3 }] }),
      (facts, value) => {
        facts.itemId = value.itemIds[0] ?? 0
      },
    ),
    step('tray.add-letters', () => ({ ...key(), from: '2000-01-01', until: '2026-12-31' })),
    step(
      'tray.change',
      (facts) => ({ ...key(), itemId: facts.itemId, copies: 4, contents: '25 seeds' }),
      (facts, value) => {
        facts.itemId = value.itemId
      },
    ),
    step('tray.render', (facts) => ({ kind: 'label', itemIds: [facts.itemId], sheet: 'a4-21' })),
    step(
      'tray.mark-printed',
      (facts) => ({ ...key(), kind: 'label', itemIds: [facts.itemId], sheet: 'a4-21' }),
      (facts, value) => {
        facts.batchId = value.batchId
      },
    ),
    step('print.list', () => ({})),
    step(
      'print.repeat',
      (facts) => ({ ...key(), batchId: facts.batchId }),
      (facts, value) => {
        facts.itemId = value.itemIds[0] ?? 0
      },
    ),
    step('tray.remove', (facts) => ({ ...key(), itemIds: [facts.itemId] })),
    step('person.export', (facts) => ({ personId: facts.memberId })),
    step('person.list-traces', (facts) => ({ personId: facts.memberId })),
    step('person.erase', (facts) => ({ ...key(), personId: facts.memberId })),
    step('backup.change-rule', () => ({ ...key(), limitMb: 500 })),
    step(
      'backup.create',
      () => ({}),
      (facts, value) => {
        facts.backup = value.file
      },
    ),
    step('backup.list', () => ({})),
    step('backup.compare', (facts) => ({ file: facts.backup })),
    step('collection.check', () => ({})),
    step('backup.restore', (facts) => ({ ...key(), file: facts.backup })),
  ]
}
