import fc from 'fast-check'
import { expect, test } from 'vitest'
import type { Amount } from '../../../db/domain/amounts/amount.ts'
import { measuredOf } from '../../../db/domain/amounts/amount.ts'
import { type BookedMovement, numbersAgree } from '../../../db/domain/ledger/agreement.ts'
import {
  afterChange,
  type Balance,
  bothNumbers,
  NOTHING,
  recountChange,
  stocktakeChange,
  takeOut,
} from '../../../db/domain/ledger/movement.ts'
import { decideReversal } from '../../../db/domain/ledger/reversal.ts'
import type { LotBasis } from '../../../db/domain/shared/closed-sets.ts'
import type { HundredSeedWeight } from '../../../db/domain/weights/hundred-seed-weight.ts'
import { anyAmount, anyWeight } from '../../builders/domain-values.ts'

type Step =
  | { readonly kind: 'intake' | 'withdrawal' | 'discard' | 'stocktake'; readonly amount: Amount }
  | { readonly kind: 'everything-out' }
  | { readonly kind: 'find-nothing' }
  | { readonly kind: 'weigh-seeds'; readonly weight: HundredSeedWeight }
  | { readonly kind: 'take-back'; readonly which: number }

interface Line extends BookedMovement {
  readonly before: Balance
  reversed: boolean
}

/** A lot's book, written only by what the domain decides. */
class Book {
  readonly lines: Line[] = []
  readonly basis: LotBasis
  weight: HundredSeedWeight

  constructor(basis: LotBasis, weight: HundredSeedWeight) {
    this.basis = basis
    this.weight = weight
  }

  get balance(): Balance {
    return this.lines.reduce<Balance>((balance, line) => afterChange(balance, line), NOTHING)
  }

  do(step: Step): void {
    const movement = step.kind === 'take-back' ? this.takenBack(step.which) : this.decided(step)
    if (movement !== null) this.lines.push({ ...movement, before: this.balance, reversed: false })
  }

  private decided(step: Exclude<Step, { kind: 'take-back' }>): BookedMovement | null {
    const { balance, basis } = this
    if (step.kind === 'weigh-seeds') {
      this.weight = step.weight
      const measured = basis === 'weighed' ? 'mass' : 'count'
      return { ...recountChange(balance, basis, this.weight), kind: 'recount', measured, weight: this.weight }
    }
    const { weight } = this
    if (step.kind === 'everything-out' || step.kind === 'find-nothing') {
      const kind = step.kind === 'find-nothing' ? 'stocktake' : 'discard'
      return { count: 0 - balance.count, mass: 0 - balance.mass, kind, measured: 'mass', weight }
    }
    const { kind, amount } = step
    const measured = measuredOf(amount)
    if (kind === 'intake') return { ...bothNumbers(amount, weight), kind, measured, weight }
    if (kind === 'stocktake') return { ...stocktakeChange(balance, amount, weight), kind, measured, weight }
    const out = takeOut(balance, amount, weight)
    return out.kind === 'allowed' ? { ...out.change, kind, measured: out.measured, weight } : null
  }

  private takenBack(which: number): BookedMovement | null {
    const index = this.lines.length === 0 ? -1 : which % this.lines.length
    const line = this.lines[index]
    if (line === undefined) return null
    const decision = decideReversal({
      ...line,
      lotNumber: 'QH26-0001-A',
      alreadyReversed: line.reversed,
      bringsWeight: line.kind === 'recount',
      balanceNow: this.balance,
      later: this.lines
        .slice(index + 1)
        .filter((other) => !other.reversed && other.kind !== 'reversal')
        .map((other) => ({ ...other, on: '2026-03-14' })),
    })
    if (decision.kind === 'refused') return null
    line.reversed = true
    return { ...decision.change, kind: 'reversal', measured: 'carried', weight: null }
  }
}

const withAmount = (kind: 'intake' | 'withdrawal' | 'discard' | 'stocktake') =>
  anyAmount.map((amount): Step => ({ kind, amount }))

const anyStep: fc.Arbitrary<Step> = fc.oneof(
  { weight: 4, arbitrary: withAmount('intake') },
  { weight: 8, arbitrary: withAmount('withdrawal') },
  { weight: 1, arbitrary: withAmount('discard') },
  { weight: 1, arbitrary: withAmount('stocktake') },
  { weight: 1, arbitrary: fc.constantFrom<Step>({ kind: 'everything-out' }, { kind: 'find-nothing' }) },
  { weight: 1, arbitrary: anyWeight.map((weight): Step => ({ kind: 'weigh-seeds', weight })) },
  { weight: 3, arbitrary: fc.nat(100).map((which): Step => ({ kind: 'take-back', which })) },
)

const anyBook = fc.tuple(fc.constantFrom<LotBasis>('weighed', 'counted'), anyWeight)

test('any sequence of entries keeps the balance at or above nothing and every pair in agreement', () => {
  fc.assert(
    fc.property(anyBook, fc.array(anyStep, { maxLength: 40 }), ([basis, weight], steps) => {
      const book = new Book(basis, weight)
      for (const step of steps) {
        book.do(step)
        // afterChange throws below zero, so reading the balance is the check.
        expect(book.balance.count).toBeGreaterThanOrEqual(0)
      }
      for (const line of book.lines) expect(numbersAgree(line, line.before)).toBe(true)
    }),
    { numRuns: 400 },
  )
})

test('taking an entry back at once restores the balance exactly', () => {
  fc.assert(
    fc.property(anyBook, fc.array(anyStep, { maxLength: 20 }), anyStep, ([basis, weight], steps, last) => {
      const book = new Book(basis, weight)
      for (const step of steps) book.do(step)
      const before = book.balance
      const lines = book.lines.length
      fc.pre(last.kind !== 'take-back')
      book.do(last)
      fc.pre(book.lines.length > lines)
      book.do({ kind: 'take-back', which: lines })
      expect(book.lines.length).toBe(lines + 2)
      expect(book.balance).toEqual(before)
    }),
    { numRuns: 400 },
  )
})

test('entries that were taken back leave no trace in the balance', () => {
  fc.assert(
    fc.property(anyBook, fc.array(anyStep, { maxLength: 40 }), ([basis, weight], steps) => {
      const book = new Book(basis, weight)
      for (const step of steps) book.do(step)
      const standing = book.lines.filter((line) => !line.reversed && line.kind !== 'reversal')
      const sum = standing.reduce(
        (total, line) => ({ count: total.count + line.count, mass: total.mass + line.mass }),
        {
          count: 0,
          mass: 0,
        },
      )
      expect(book.balance).toEqual(sum)
    }),
    { numRuns: 400 },
  )
})

test('what is taken back newest first can all be taken back, down to the empty book', () => {
  fc.assert(
    fc.property(anyBook, fc.array(anyStep, { maxLength: 25 }), ([basis, weight], steps) => {
      const book = new Book(basis, weight)
      for (const step of steps) if (step.kind !== 'take-back') book.do(step)
      for (let index = book.lines.length - 1; index >= 0; index--)
        book.do({ kind: 'take-back', which: index })
      expect(book.balance).toEqual(NOTHING)
    }),
    { numRuns: 200 },
  )
})
