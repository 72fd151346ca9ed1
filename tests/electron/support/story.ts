import type { CallInput, OperationName, Value } from '../../../db/contract/contract.ts'
import { TODAY } from '../../builders/temporary-collection.ts'

/** What later steps need of earlier answers. */
export interface Facts {
  readonly lots: number[]
  entryId: number
  personId: number
  placeId: number
  cropId: string
  accessionId: number
  varietyId: number
  otherVarietyId: number
  splitLotId: number
  itemId: number
  batchId: number
  giftId: number
  withdrawalId: number
  memberId: number
  testId: number
  listId: number
  siteId: number
  growOutId: number
  backup: string
  packed: string
}

/** What is known before the first step. */
export function noFacts(): Facts {
  return {
    lots: [],
    entryId: 0,
    personId: 0,
    placeId: 0,
    cropId: '',
    accessionId: 0,
    varietyId: 0,
    otherVarietyId: 0,
    splitLotId: 0,
    itemId: 0,
    batchId: 0,
    giftId: 0,
    withdrawalId: 0,
    memberId: 0,
    testId: 0,
    listId: 0,
    siteId: 0,
    growOutId: 0,
    backup: '',
    packed: '',
  }
}

export interface Step<N extends OperationName = OperationName> {
  readonly name: N
  readonly input: (facts: Facts) => unknown
  readonly note: (facts: Facts, value: unknown) => void
}

function step<N extends OperationName>(
  name: N,
  input: (facts: Facts) => CallInput<N>,
  note: (facts: Facts, value: Value<N>) => void = () => {},
): Step {
  return { name, input, note: note as Step['note'] }
}

let keys = 0
function key(): { key: string } {
  keys += 1
  return { key: `story-step-${keys}` }
}

const lot = (facts: Facts, index: number): number => {
  const id = facts.lots[index]
  if (id === undefined) throw new Error(`The story has taken in no lot ${index}`)
  return id
}

/** A list of one gift, as a spreadsheet saves it. */
const LIST = {
  fileName: 'list.csv',
  content: Buffer.from('Crop;Variety;Year;Amount\nPea;Weir Marrowfat;2024;80 g\n').toString('base64'),
}

/** Every operation once at least, in the order in which a library's first day could bring them. */
export function story(): readonly Step[] {
  keys = 0
  return [
    step('collection.open-demo', () => key()),
    step('collection.start', () => ({
      ...key(),
      libraryName: 'Hollow Lane Library',
      accessionPattern: 'HL{yy}-{####}',
    })),
    step(
      'package.make',
      () => ({ people: true, places: true }),
      (facts, value) => {
        facts.packed = value.content
      },
    ),
    step('package.read-back', (facts) => ({ content: facts.packed })),
    step('collection.about', () => ({})),
    step('forecast.left', () => ({})),
    step('forecast.refresh', () => ({ limit: 10 })),
    step('forecast.hold', () => ({ held: false })),
    step('collection.change-settings', () => ({
      ...key(),
      settings: { locale: 'en-GB', regrowingsKept: 2 },
    })),
    step('crop.list', () => ({})),
    step('crop.get', () => ({ cropId: 'bean' })),
    step('crop.override', () => ({ ...key(), cropId: 'bean', plantsToKeep: 40, reason: 'Small garden' })),
    step(
      'crop.create',
      () => ({ ...key(), name: 'Lantern vine' }),
      (facts, value) => {
        facts.cropId = value.cropId
      },
    ),
    step('crop.correct', (facts) => ({
      ...key(),
      cropId: facts.cropId,
      correction: { species: 'Lychnitis errans', hundredSeedWeightG: 0.04 },
    })),
    step(
      'place.create',
      () => ({ ...key(), name: 'Back room', kind: 'room' }),
      (facts, value) => {
        facts.placeId = value.placeId
      },
    ),
    step('place.list', () => ({})),
    step('place.foresee-kind', (facts) => ({ placeId: facts.placeId, kind: 'cupboard' })),
    step('place.foresee-moves', (facts) => ({ placeId: facts.placeId })),
    step('place.spell-cost', (facts) => ({
      placeId: facts.placeId,
      from: '2026-02-01',
      until: '2026-02-07',
    })),
    step('place.change-kind', (facts) => ({ ...key(), placeId: facts.placeId, kind: 'cupboard' })),
    step('storage.list', () => ({})),
    step('place.set-terms', (facts) => ({ ...key(), placeId: facts.placeId, aim: 'short-term' })),
    step('reading.note', (facts) => ({
      ...key(),
      placeId: facts.placeId,
      on: TODAY,
      time: '08:30',
      temperature: 18.5,
      humidity: 42,
    })),
    step('readings.foresee-file', (facts) => ({
      placeId: facts.placeId,
      fileName: 'back-room.csv',
      text: 'Time,Temperature C,Humidity\n2026-03-01 08:00,18.5,42\n',
    })),
    step('passport.make', () => ({})),
    step('occurrence.make', () => ({})),
    step('stock.make', () => ({})),
    step('list.foresee', () => LIST),
    step('list.refused', () => LIST),
    step('list.take-in', () => ({ ...key(), ...LIST })),
    step('readings.import-file', (facts) => ({
      ...key(),
      placeId: facts.placeId,
      fileName: 'back-room.csv',
      text: 'Time,Temperature C,Humidity\n2026-03-01 08:00,18.5,42\n',
    })),
    step('storage.get', (facts) => ({ placeId: facts.placeId })),
    step('round.list', () => ({})),
    step('storage.compare', (facts) => ({ placeIds: [facts.placeId, facts.placeId] })),
    step(
      'person.create',
      () => ({ ...key(), name: 'Ilka Brandt', town: 'Quillhaven', roles: ['donor'] }),
      (facts, value) => {
        facts.personId = value.personId
      },
    ),
    step('person.search', () => ({ text: 'ilka' })),
    step(
      'variety.create',
      () => ({ ...key(), cropId: 'pea', name: 'Hollow Lane Tall' }),
      (facts, value) => {
        facts.varietyId = value.varietyId
      },
    ),
    step('variety.add-synonym', (facts) => ({ ...key(), varietyId: facts.varietyId, name: 'Lane Pea' })),
    step('variety.search', () => ({ text: 'lane' })),
    step('amount.read', () => ({ text: '12,5 g', cropId: 'bean' })),
    step(
      'intake.record',
      (facts) => ({
        ...key(),
        donor: { personId: facts.personId },
        receivedOn: TODAY,
        gifts: [
          {
            variety: { newVariety: { cropId: 'bean', name: 'Ferry Bean' } },
            amount: '300 seeds',
            harvest: '2024',
          },
          { variety: { varietyId: facts.varietyId }, amount: '80 g', sample: '25 weigh 6.10 g' },
          {
            variety: { newVariety: { cropId: 'bean', name: 'Dyed Bean' } },
            amount: '90 seeds',
            cautions: ['treated'],
          },
        ],
      }),
      (facts, value) => {
        facts.lots.push(...value.taken.map((gift) => gift.lotId))
        facts.accessionId = value.taken[0]?.accessionId ?? 0
      },
    ),
    step('lot.list', () => ({})),
    step('forecast.get', (facts) => ({ lotId: lot(facts, 0) })),
    step('lot.get', (facts) => ({ lotId: lot(facts, 0) })),
    step('lot.note-container', (facts) => ({
      ...key(),
      lotIds: [lot(facts, 0)],
      kind: 'jar',
      airtight: true,
      pestProof: true,
      since: TODAY,
    })),
    step('moisture.read', (facts) => ({
      lotId: lot(facts, 0),
      measured: { method: 'sealed-jar', humidity: 35, temperature: 20 },
    })),
    step('moisture.note', (facts) => ({
      ...key(),
      lotId: lot(facts, 0),
      on: TODAY,
      measured: { method: 'break-check', gives: 'bends' },
    })),
    step('place.set-terms', (facts) => ({
      ...key(),
      placeId: facts.placeId,
      aim: 'short-term',
      roundDays: 30,
    })),
    step('round.due', () => ({})),
    step('round.sheet', () => ({})),
    step('round.record', (facts) => ({
      ...key(),
      on: TODAY,
      walkedBy: 'Ilka Brandt',
      places: [{ placeId: facts.placeId, checks: [{ look: 'pests', outcome: 'fine' }] }],
    })),
    step('lot.storage', (facts) => ({ lotId: lot(facts, 0) })),
    step('drying.plan', () => ({ grams: 450, from: 13, to: 7 })),
    step('lot.foresee-move', (facts) => ({ lotIds: [lot(facts, 0)], placeId: facts.placeId })),
    step('lot.workbook', (facts) => ({ lotIds: [lot(facts, 0)] })),
    step('lot.export', (facts) => ({ lotIds: [lot(facts, 0)] })),
    step('find.anything', () => ({ text: 'ferry' })),
    step('lot.offer', () => ({ text: 'ferry' })),
    step('need.list', () => ({})),
    step('accession.override', (facts) => ({ ...key(), accessionId: facts.accessionId, plantsToKeep: 30 })),
    step('regrow.needs', () => ({ text: 'ferry' })),
    step('regrow.get', (facts) => ({ accessionId: facts.accessionId })),
    step(
      'season-list.save',
      (facts) => ({ ...key(), chosen: [facts.accessionId], note: 'First season' }),
      (facts, value) => {
        facts.listId = value.listId
      },
    ),
    step(
      'site.save',
      () => ({ ...key(), name: 'Allotment 12', growerId: null, areaM2: 30, mostVarieties: 4 }),
      (facts, value) => {
        facts.siteId = value.siteId
      },
    ),
    step('site.list', () => ({})),
    step('plan.make', (facts) => ({ accessionIds: [facts.accessionId], seconds: 2 })),
    step('plan.check', (facts) => ({
      choices: [{ accessionId: facts.accessionId, siteId: facts.siteId }],
    })),
    step('plan.save', (facts) => ({
      ...key(),
      choices: [{ accessionId: facts.accessionId, siteId: facts.siteId }],
    })),
    step('plan.latest', () => ({})),
    step(
      'grow-out.list',
      () => ({}),
      (facts, value) => {
        facts.growOutId = value.growOuts[0]?.growOutId ?? 0
      },
    ),
    step('grow-out.note', (facts) => ({
      ...key(),
      growOutId: facts.growOutId,
      kind: 'sown',
      on: TODAY,
      plants: 30,
    })),
    step('plan.sheets', (facts) => ({ siteId: facts.siteId })),
    step('season-list.list', () => ({})),
    step('season-list.get', (facts) => ({ listId: facts.listId })),
    step('lot.weigh-seeds', (facts) => ({
      ...key(),
      lotId: lot(facts, 1),
      on: TODAY,
      replicates: [
        { seeds: 100, grams: 24.4 },
        { seeds: 100, grams: 24.6 },
      ],
    })),
    step('withdrawal.foresee', (facts) => ({ lines: [{ lotId: lot(facts, 0), amount: '2 packets of 25' }] })),
    step('draft.keep', () => ({ draftId: 'visit-of-today', kind: 'hand-out', text: '{"lines":[]}' })),
    step('draft.list', () => ({ kind: 'hand-out' })),
    step(
      'withdrawal.record',
      (facts) => ({
        ...key(),
        person: { newPerson: { name: 'Teodor Ash' } },
        on: TODAY,
        lines: [{ lotId: lot(facts, 0), amount: '2 packets of 25' }],
        promised: 'a handful',
        promisedBy: '2026-10-01',
      }),
      (facts, value) => {
        facts.withdrawalId = value.withdrawalId
        facts.memberId = value.personId ?? 0
      },
    ),
    step('withdrawal.out', (facts) => ({ personId: facts.memberId })),
    step('promise.list', () => ({})),
    step('promise.let-go', (facts) => ({
      ...key(),
      withdrawalId: facts.withdrawalId,
      reason: 'Hail in July',
    })),
    step('paper-sheet.record', (facts) => ({
      ...key(),
      on: TODAY,
      lines: [{ person: null, lotId: lot(facts, 0), amount: '5 seeds' }],
    })),
    step('stocktake.foresee', (facts) => ({ lines: [{ lotId: lot(facts, 0), found: '90 g' }] })),
    step('stocktake.record', (facts) => ({
      ...key(),
      on: TODAY,
      reason: 'Spring stocktake',
      lines: [{ lotId: lot(facts, 0), found: '90 g' }],
    })),
    step(
      'gift.offer',
      () => ({
        ...key(),
        donor: null,
        offeredOn: TODAY,
        gift: { variety: { newVariety: { cropId: 'pea', name: 'Dusk Climber' } }, amount: '40 seeds' },
        decision: { kind: 'later', waitsFor: [{ step: 'drying' }] },
      }),
      (facts, { giftId }) => {
        facts.giftId = giftId
      },
    ),
    step('gift.note-step', (facts) => ({
      ...key(),
      giftId: facts.giftId,
      step: 'drying',
      done: true,
      on: TODAY,
    })),
    step('gift.list', () => ({})),
    step('gift.accept', (facts) => ({ ...key(), giftId: facts.giftId, receivedOn: TODAY })),
    step(
      'gift.offer',
      () => ({
        ...key(),
        donor: null,
        offeredOn: TODAY,
        gift: { variety: { newVariety: { cropId: 'pea', name: 'Rook' } }, amount: '40 seeds' },
        decision: { kind: 'later' },
      }),
      (facts, { giftId }) => {
        facts.giftId = giftId
      },
    ),
    step('gift.decline', (facts) => ({ ...key(), giftId: facts.giftId, reason: 'Mouldy' })),
    step('collection.revision', () => ({})),
    step('return.record', (facts) => ({
      ...key(),
      person: { personId: facts.personId },
      parentLotId: lot(facts, 0),
      receivedOn: TODAY,
      amount: '120 seeds',
      plantsGrown: 12,
    })),
    step(
      'lot.split',
      (facts) => ({ ...key(), lotId: lot(facts, 0), on: TODAY, amount: '100 seeds', role: 'working' }),
      (facts, value) => {
        facts.splitLotId = value.newLotId
      },
    ),
    step('lot.join', (facts) => ({
      ...key(),
      intoLotId: lot(facts, 0),
      fromLotIds: [facts.splitLotId],
      on: TODAY,
    })),
    step('lot.move', (facts) => ({ ...key(), lotIds: [lot(facts, 0)], placeId: facts.placeId, on: TODAY })),
    step('lot.take-stock', (facts) => ({
      ...key(),
      lotId: lot(facts, 0),
      on: TODAY,
      found: '240 seeds',
      reason: 'Counted again',
    })),
    step('lot.release', (facts) => ({ ...key(), lotId: lot(facts, 2), checked: 'The dye is food colour' })),
    step('lot.quarantine', (facts) => ({ ...key(), lotId: lot(facts, 2), reason: 'Pests seen in the jar' })),
    step('germination.record', (facts) => ({
      ...key(),
      lotId: lot(facts, 0),
      on: TODAY,
      tested: 50,
      sprouted: 44,
    })),
    step('germination.plan', (facts) => ({ lotId: lot(facts, 0) })),
    step(
      'germination.begin',
      (facts) => ({
        ...key(),
        lotId: lot(facts, 0),
        on: TODAY,
        replicates: [10, 10],
        medium: 'rolled paper towel',
        firstDay: 5,
        finalDay: 9,
      }),
      (facts, value) => {
        facts.testId = value.testId
      },
    ),
    step('germination.list', () => ({})),
    step('germination.sheet', () => ({})),
    step('germination.count', (facts) => ({
      ...key(),
      testId: facts.testId,
      on: TODAY,
      replicates: [{ normal: 9 }, { normal: 8, dead: 1 }],
    })),
    step('germination.get', (facts) => ({ testId: facts.testId })),
    step('germination.finish', (facts) => ({ ...key(), testId: facts.testId, on: TODAY })),
    step('germination.due', () => ({ withinDays: 4_000 })),
    step(
      'germination.begin',
      (facts) => ({ ...key(), lotId: lot(facts, 0), on: TODAY, replicates: [10], finalDay: 9 }),
      (facts, value) => {
        facts.testId = value.testId
      },
    ),
    step('germination.cancel', (facts) => ({
      ...key(),
      testId: facts.testId,
      on: TODAY,
      reason: 'Laid out by mistake',
      seedsBack: true,
    })),
    step(
      'lot.discard',
      (facts) => ({ ...key(), lotId: lot(facts, 2), on: TODAY, amount: 'everything', reason: 'Pests' }),
      (facts, value) => {
        facts.entryId = value.entryId
      },
    ),
    step('entry.take-back', (facts) => ({ ...key(), entryId: facts.entryId })),
    step('entry.list', () => ({})),
    step('person.update', (facts) => ({ ...key(), personId: facts.personId, mayWrite: true })),
    step('person.join', (facts) => ({ ...key(), keepId: facts.personId, joinId: facts.memberId })),
    step(
      'variety.create',
      () => ({ ...key(), cropId: 'pea', name: 'Lane Peas' }),
      (facts, value) => {
        facts.otherVarietyId = value.varietyId
      },
    ),
    step('variety.join', (facts) => ({
      ...key(),
      keepId: facts.varietyId,
      joinId: facts.otherVarietyId,
    })),
    step('person.list', () => ({ text: 'ash' })),
    step('person.get', (facts) => ({ personId: facts.personId })),
    step('label.sheets', () => ({})),
    step('label-sheet.keep', () => ({
      ...key(),
      measures: {
        name: 'Jars',
        pageWidthMm: 210,
        pageHeightMm: 297,
        columns: 2,
        rows: 5,
        widthMm: 90,
        heightMm: 50,
        leftMm: 12,
        topMm: 20,
        pitchXMm: 95,
        pitchYMm: 52,
      },
    })),
    step('label-sheet.retire', () => ({ ...key(), sheetId: 1 })),
    step('keep-card.print', (facts) => ({ lotIds: [lot(facts, 0)] })),
    step('ruler.print', () => ({})),
    step('stocktake.sheet', () => ({})),
    step('catalogue.print', () => ({})),
    step('catalogue.page', () => ({})),
    step('year.report', () => ({ year: 2026 })),
    step('label.print', (facts) => ({ labels: [{ lotId: lot(facts, 0) }], sheet: 'a4-21' })),
    step('tray.list', () => ({})),
    step('letter.words', () => ({})),
    step('letter.change-words', () => ({ ...key(), words: 'Thank you, {donor}.', keeper: 'Ansa Reed' })),
    step('letter.preview', () => ({ words: 'Thank you, {donor}.', keeper: '' })),
    step(
      'tray.add',
      (facts) => ({ ...key(), items: [{ kind: 'label', lotId: lot(facts, 0), copies: 3 }] }),
      (facts, value) => {
        facts.itemId = value.itemIds[0] ?? 0
      },
    ),
    step(
      'tray.change',
      (facts) => ({ ...key(), itemId: facts.itemId, copies: 4, contents: '25 seeds' }),
      (facts, value) => {
        facts.itemId = value.itemId
      },
    ),
    step('tray.preview', (facts) => ({ kind: 'label', itemIds: [facts.itemId], sheet: 'a4-21' })),
    step(
      'tray.mark-printed',
      (facts) => ({ ...key(), kind: 'label', itemIds: [facts.itemId], sheet: 'a4-21' }),
      (facts, value) => {
        facts.batchId = value.batchId
      },
    ),
    step('print.history', () => ({})),
    step(
      'print.again',
      (facts) => ({ ...key(), batchId: facts.batchId }),
      (facts, value) => {
        facts.itemId = value.itemIds[0] ?? 0
      },
    ),
    step('tray.remove', (facts) => ({ ...key(), itemIds: [facts.itemId] })),
    step('person.export', (facts) => ({ personId: facts.memberId })),
    step('person.erase', (facts) => ({ ...key(), personId: facts.memberId })),
    step('backup.change-keeping', () => ({ ...key(), limitMb: 500 })),
    step(
      'collection.back-up',
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
