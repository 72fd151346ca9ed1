import { describe, expect, test } from 'vitest'
import { contract } from '../../db/contract/contract.ts'
import { NO_LIMITS } from '../../db/domain/terms/gift-limits.ts'
import { english } from '../../db/messages/english.ts'
import {
  emptyGift,
  GIFT_REFUSALS,
  type GiftLine,
  giftProblems,
  isUntouched,
} from '../../renderer/screens/take-in/gift-line.ts'
import {
  emptyVisit,
  giftRules,
  isBlankVisit,
  nextVisit,
  type TakeInDraft,
  visitOf,
} from '../../renderer/screens/take-in/take-in-draft.ts'
import { typedLimits } from '../../renderer/shared/limits-form/typed-limits.ts'
import { NO_PERSON_YET } from '../../renderer/shared/table-form/person-draft.ts'
import { refusedStep } from '../../renderer/shared/table-form/refusals.ts'
import { closeLines, noLines, stepLines } from '../../renderer/shared/table-form/visit-lines.ts'

const YEAR = 2026
const KEY = 'visit-key-1'

function aGift(change: Partial<GiftLine> = {}): GiftLine {
  return {
    ...emptyGift('gift-a', '2024'),
    variety: 'Quillhaven Brown',
    varietyIs: 'new',
    cropId: 'bean',
    crop: 'Common bean',
    amount: '30 seeds',
    ...change,
  }
}

const ODILE = { ...NO_PERSON_YET, is: 'known', text: 'Odile Marsh', personId: 7 } as const

function aVisit(line: GiftLine): TakeInDraft {
  return { ...emptyVisit(KEY), donor: ODILE, gifts: noLines(line) }
}

/** The visit closed for saving, as it is sent. */
function sentOf(draft: TakeInDraft) {
  const { lines, problems } = closeLines(draft.gifts, giftRules(YEAR, english.text), 'next')
  expect(problems).toBeNull()
  return visitOf(draft, lines.listed, '2026-11-25')
}

describe('a gift as it is typed', () => {
  test('has the terms that were typed while its box is ticked, and none while it is not', () => {
    const limits = { ...typedLimits(NO_LIMITS), share: 'community', agreementEnds: '' } as const
    const termsOf = (line: Partial<GiftLine>) => sentOf(aVisit(aGift(line)))?.gifts[0]?.limits
    expect(termsOf({ limited: true, limits })).toEqual({ ...NO_LIMITS, share: 'community' })
    expect([termsOf({ limited: false, limits }), termsOf({})]).toEqual([null, null])
    expect(GIFT_REFUSALS.line?.('limits.communityLink')).toBe('communityLink')
  })

  test('lacks nothing when variety, crop and amount are there', () => {
    expect(giftProblems(aGift(), YEAR, english.text)).toEqual({})
  })

  test.each([
    [{ variety: '' }, 'variety'],
    [{ varietyIs: 'open' }, 'variety'],
    [{ cropId: null }, 'crop'],
    [{ harvest: 'last summer' }, 'harvest'],
    [{ harvest: '2031' }, 'harvest'],
    [{ amount: '30' }, 'amount'],
    [{ amount: '' }, 'amount'],
    [{ sample: '25 of them' }, 'sample'],
    [{ decision: 'decline', reason: ' ' }, 'reason'],
    [{ decision: 'later', amount: 'a lot' }, 'amount'],
  ] as const)('%j is said at its field %s', (change, field) => {
    expect(Object.keys(giftProblems(aGift(change), YEAR, english.text))).toEqual([field])
  })

  test('may stay unweighed where it is kept for later or declined', () => {
    expect(giftProblems(aGift({ decision: 'later', amount: '' }), YEAR, english.text)).toEqual({})
    expect(
      giftProblems(aGift({ decision: 'decline', reason: 'mould', amount: '' }), YEAR, english.text),
    ).toEqual({})
  })

  test('an unknown harvest year is an answer', () => {
    expect(giftProblems(aGift({ harvest: '' }), YEAR, english.text)).toEqual({})
  })

  test('a season that stayed from the last gift does not make a line', () => {
    expect(isUntouched(emptyGift('b', '2024'))).toBe(true)
    expect(isUntouched({ ...emptyGift('b'), cautions: ['treated'] })).toBe(false)
  })

  test.each([
    ['gifts.2.amount', { line: 2, step: 'amount' }],
    ['gifts.0.variety.newVariety.name', { line: 0, step: 'variety' }],
    ['gifts.0.variety.newVariety.cropId', { line: 0, step: 'crop' }],
    ['gifts.0.variety.newVariety.newCrop.name', { line: 0, step: 'crop' }],
    ['gifts.1.cautions.0', { line: 1, step: 'cautionNote' }],
    ['gifts.1.decision.reason', { line: 1, step: 'reason' }],
    ['gifts.1', { line: 1, step: 'variety' }],
    ['donor.newPerson.email', { step: 'email' }],
    [null, null],
  ])('the path %s of a refusal leads to %j', (path, place) => {
    expect(refusedStep(path, GIFT_REFUSALS)).toEqual(place)
  })
})

describe('a visit of a donor', () => {
  test('the season stays for the next gift, its story does not', () => {
    const { gifts } = aVisit(aGift({ story: 'from an aunt' }))
    const { line } = stepLines(
      gifts,
      { kind: 'list-line', nextId: 'next' },
      giftRules(YEAR, english.text).make,
    )
    expect(line.harvest).toBe('2024')
    expect(line.story).toBe('')
  })

  test('the place stays for the next donor, and nothing else does', () => {
    const placed = { ...aVisit(aGift()), placeId: 12, receivedOn: '2026-01-02' }
    const next = nextVisit(placed, 'visit-key-2')
    expect(next).toEqual(emptyVisit('visit-key-2', 12))
    expect(isBlankVisit(next)).toBe(true)
  })

  test('a pinned place alone is nothing to keep; one letter of a name is', () => {
    expect(isBlankVisit(emptyVisit(KEY, 12))).toBe(true)
    expect(isBlankVisit({ ...emptyVisit(KEY), donor: { ...NO_PERSON_YET, text: 'O' } })).toBe(false)
  })

  test('a crop that the table has not is sent by its name', () => {
    const draft = aVisit(aGift({ cropId: null, crop: 'Lantern vine', newCrop: true }))
    const sent = sentOf(draft)
    expect(contract['intake.record'].input.parse(sent).gifts[0]?.variety).toMatchObject({
      newVariety: {
        name: 'Quillhaven Brown',
        newCrop: { name: 'Lantern vine', species: '', packetSeeds: null },
      },
    })
  })

  test('closed and sent, it is what the contract takes', () => {
    const draft = { ...aVisit(aGift({ cautions: ['toxic'], cautionNote: 'beans raw' })), placeId: 3 }
    const sent = sentOf(draft)
    expect(contract['intake.record'].input.parse(sent)).toMatchObject({
      key: KEY,
      donor: { personId: 7 },
      receivedOn: '2026-11-25',
      gifts: [
        { variety: { newVariety: { cropId: 'bean' } }, amount: '30 seeds', cautions: ['toxic'], placeId: 3 },
      ],
    })
  })

  test.each([
    [{ decision: 'take-in', reason: 'mould', waitsFor: 'drying' }, { kind: 'take-in' }],
    [
      { decision: 'later', waitsFor: 'drying' },
      { kind: 'later', waitsFor: [{ step: 'drying' }] },
    ],
    [{ decision: 'later' }, { kind: 'later', waitsFor: [] }],
    [
      { decision: 'decline', reason: 'mould' },
      { kind: 'decline', reason: 'mould' },
    ],
  ] as const)('%j is sent as %j', (change, decision) => {
    const draft = aVisit(aGift(change))
    expect(sentOf(draft)?.gifts[0]?.decision).toEqual(decision)
  })

  test('a caution taken back takes its note along', () => {
    const draft = aVisit(aGift({ cautions: [], cautionNote: 'thiram' }))
    expect(sentOf(draft)?.gifts[0]?.cautionNote).toBe('')
  })

  test('without a donor it is not sent; with nobody it is', () => {
    const by = (is: 'open' | 'nobody') =>
      visitOf({ ...aVisit(aGift()), donor: { ...ODILE, is } }, [], '2026-11-25')
    expect(by('open')).toBeNull()
    expect(by('nobody')?.donor).toBeNull()
  })

  test('an address is sent only with leave to write', () => {
    const fresh = { ...ODILE, is: 'new', text: 'Tove Lindqvist', email: 'tove@quillhaven.example' } as const
    const donorOf = (mayWrite: boolean) =>
      visitOf({ ...aVisit(aGift()), donor: { ...fresh, mayWrite } }, [], '2026-11-25')?.donor
    expect(donorOf(false)).toMatchObject({ newPerson: { email: '', mayWrite: false } })
    expect(donorOf(true)).toMatchObject({ newPerson: { email: 'tove@quillhaven.example', mayWrite: true } })
  })
})
