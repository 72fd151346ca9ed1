import { describe, expect, test } from 'vitest'
import { contract } from '../../db/contract/contract.ts'
import { message } from '../../db/messages/message.ts'
import type { Texts } from '../../db/messages/texts.ts'
import {
  emptyHandOut,
  handOutOf,
  isBlankHandOut,
  OUT_REFUSALS,
  outProblems,
  PACKETS,
} from '../../renderer/screens/hand-out/hand-out-draft.ts'
import { NO_INSTITUTION } from '../../renderer/shared/institutions/institution-draft.ts'
import { emptyLotLine, withLot } from '../../renderer/shared/table-form/lot-line.ts'
import { NO_PERSON_YET } from '../../renderer/shared/table-form/person-draft.ts'
import { refusedStep } from '../../renderer/shared/table-form/refusals.ts'
import { closeLines, noLines } from '../../renderer/shared/table-form/visit-lines.ts'
import { inEnglish } from '../builders/in-english.ts'

const t: Texts['text'] = (...told) => inEnglish<string>(message(...told) as never)

const OFFER = {
  lotId: 4,
  lotNumber: 'HL26-0004-A',
  variety: 'Quillhaven Brown',
  crop: 'Common bean',
  why: 'oldest good lot',
  packetSeeds: 20,
}

function aLine(amount = '1 packet of 20') {
  return { ...emptyLotLine('line-a'), ...withLot(emptyLotLine('line-a'), OFFER, t), amount }
}

describe('a packet as it is typed', () => {
  test('a picked lot brings one packet of the usual size, which can be read', () => {
    const line = { ...emptyLotLine('line-a'), ...withLot(emptyLotLine('line-a'), OFFER, t) }
    expect(line.amount).toBe('1 packet of 20')
    expect(outProblems(line)).toEqual({})
  })

  test('an amount typed before the lot stays; that of another lot does not', () => {
    const before = withLot({ lot: null, amount: '5 g' }, OFFER, t)
    expect(before.amount).toBe('5 g')
    expect(withLot(before, { ...OFFER, packetSeeds: 50 }, t).amount).toBe('1 packet of 50')
  })

  test('a crop without a usual packet asks for the amount', () => {
    expect(withLot(emptyLotLine('line-a'), { ...OFFER, packetSeeds: null }, t).amount).toBe('')
  })

  test('letters that were never picked are asked about at the lot', () => {
    expect(outProblems({ ...emptyLotLine('a'), text: 'brow', amount: '5 g' }).lot).toEqual(
      message('hand-out.choose-lot', { typed: 'brow' }),
    )
  })

  test.each([
    ['lines.1.amount', { line: 1, step: 'amount' }],
    ['lines.0.lotId', { line: 0, step: 'lot' }],
    ['lines.3', { line: 3, step: 'lot' }],
    ['person.newPerson.name', { step: 'person' }],
    ['person.newPerson.creditAs', { step: 'creditAs' }],
    ['person', { step: 'person' }],
    ['promisedBy', null],
    [null, null],
  ])('the path %s of a refusal leads to %j', (path, place) => {
    expect(refusedStep(path, OUT_REFUSALS)).toEqual(place)
  })
})

describe('a visit of a member', () => {
  const visit = {
    ...emptyHandOut('visit-key-1'),
    member: { ...NO_PERSON_YET, is: 'nobody' as const },
    lines: noLines(aLine()),
  }

  test('closed and sent, it is what the contract takes', () => {
    const { lines, problems } = closeLines(visit.lines, PACKETS, 'next')
    expect(problems).toBeNull()
    const sent = handOutOf(visit, lines.listed, [], '2026-11-25')
    expect(contract['withdrawal.record'].input.parse(sent)).toMatchObject({
      person: null,
      on: '2026-11-25',
      lines: [{ lotId: 4, amount: '1 packet of 20' }],
      promisedBy: null,
      despite: [],
    })
  })

  test('a reason goes along only with a caution that was read', () => {
    const reasoned = { ...visit, reason: 'last chance this spring' }
    const { lines } = closeLines(reasoned.lines, PACKETS, 'next')
    expect(handOutOf(reasoned, lines.listed, [], '2026-11-25')?.reason).toBe('')
    expect(handOutOf(reasoned, lines.listed, ['too-few-left'], '2026-11-25')).toMatchObject({
      despite: ['too-few-left'],
      reason: 'last chance this spring',
    })
  })

  test('what belongs to an institution goes along only with a hand-out for something else, and is worth keeping', () => {
    const typed = { ...NO_INSTITUTION, askedOn: '2026-11-01', intendedUse: 'a trial' }
    const { lines } = closeLines(visit.lines, PACKETS, 'next')
    const sentFor = (purpose: 'other' | 'to-grow') =>
      handOutOf({ ...visit, purpose, institution: typed }, lines.listed, [], '2026-11-25')?.institution
    expect(sentFor('other')).toEqual({ ...typed, sentOn: null })
    expect(sentFor('to-grow')).toBeNull()
    expect(isBlankHandOut({ ...emptyHandOut('visit-key-3'), institution: typed })).toBe(false)
    const { institution: _, ...older } = emptyHandOut('visit-key-4')
    expect(isBlankHandOut(older)).toBe(true)
  })

  test('what is typed of it is worth keeping, an empty one is not', () => {
    expect(isBlankHandOut(emptyHandOut('visit-key-2'))).toBe(true)
    expect(isBlankHandOut(visit)).toBe(false)
  })
})
