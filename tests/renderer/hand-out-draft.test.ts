import { describe, expect, test } from 'vitest'
import { contract } from '../../db/contract/contract.ts'
import {
  closeHandOut,
  emptyHandOut,
  handOutOf,
  isBlankHandOut,
  stepHandOut,
} from '../../renderer/screens/hand-out/hand-out-draft.ts'
import { emptyOutLine, outFieldOf, outProblems, withLot } from '../../renderer/screens/hand-out/out-line.ts'

const OFFER = {
  lotId: 4,
  lotNumber: 'HL26-0004-A',
  variety: 'Quillhaven Brown',
  crop: 'Common bean',
  why: 'oldest good lot',
  packetSeeds: 20,
}

function aLine(amount = '1 packet of 20') {
  return { ...emptyOutLine('line-a'), ...withLot(emptyOutLine('line-a'), OFFER), amount }
}

describe('a packet as it is typed', () => {
  test('a picked lot brings one packet of the usual size, which can be read', () => {
    const line = { ...emptyOutLine('line-a'), ...withLot(emptyOutLine('line-a'), OFFER) }
    expect(line.amount).toBe('1 packet of 20')
    expect(outProblems(line)).toEqual({})
  })

  test('an amount typed before the lot stays; that of another lot does not', () => {
    const before = withLot({ lot: null, amount: '5 g' }, OFFER)
    expect(before.amount).toBe('5 g')
    expect(withLot(before, { ...OFFER, packetSeeds: 50 }).amount).toBe('1 packet of 50')
  })

  test('a crop without a usual packet asks for the amount', () => {
    expect(withLot(emptyOutLine('line-a'), { ...OFFER, packetSeeds: null }).amount).toBe('')
  })

  test('letters that were never picked are asked about at the lot', () => {
    expect(outProblems({ ...emptyOutLine('a'), text: 'brow', amount: '5 g' }).lot).toContain('brow')
  })

  test.each([
    ['lines.1.amount', { line: 1, field: 'amount' }],
    ['lines.0.lotId', { line: 0, field: 'lot' }],
    ['lines.3', { line: 3, field: 'lot' }],
    ['person.newPerson.name', null],
  ])('the path %s of a refusal leads to %j', (path, place) => {
    expect(outFieldOf(path)).toEqual(place)
  })
})

describe('a visit of a member', () => {
  const nobody = stepHandOut(emptyHandOut('visit-key-1'), { kind: 'member', change: { is: 'nobody' } })
  const visit = stepHandOut(nobody, { kind: 'line', change: aLine() })

  test('closed and sent, it is what the contract takes', () => {
    const { lines, problems } = closeHandOut(visit, 'next')
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
    const reasoned = stepHandOut(visit, { kind: 'visit', change: { reason: 'last chance this spring' } })
    const { lines } = closeHandOut(reasoned, 'next')
    expect(handOutOf(reasoned, lines.listed, [], '2026-11-25')?.reason).toBe('')
    expect(handOutOf(reasoned, lines.listed, ['too-few-left'], '2026-11-25')).toMatchObject({
      despite: ['too-few-left'],
      reason: 'last chance this spring',
    })
  })

  test('the next member begins with nothing of the last', () => {
    const next = stepHandOut(visit, { kind: 'next-member', key: 'visit-key-2' })
    expect(isBlankHandOut(next)).toBe(true)
    expect(isBlankHandOut(visit)).toBe(false)
  })
})
