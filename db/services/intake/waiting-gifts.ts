import type { Result } from '../../contract/contract.ts'
import { Gift } from '../../contract/intake-operations.ts'
import { refuse } from '../../contract/refusal.ts'
import {
  giftStanding,
  isLate,
  type Waiting,
  waitingCaution,
  waitingTold,
} from '../../domain/intake/waiting.ts'
import { message } from '../../messages/message.ts'
import { eventsOf, type GiftRow, giftRows, quarantinedLots } from '../../queries/waiting-gifts.ts'
import type { Reading, Reads, Writes } from '../book/context.ts'
import { personFor } from '../book/people.ts'
import { reasonOf } from '../book/quarantine-reason.ts'
import { takeInGift, tookIn } from './intake.ts'
import { keepAsOffered, noteEvent } from './offered-gift.ts'

type WaitingGift = Result<'gift.list'>['gifts'][number]

export const offerGift: Writes<'gift.offer'> = (writing, input) => {
  const { donor, gift, offeredOn: on, decision } = input
  const personId = donor === null ? null : personFor(writing, donor, 'donor', 'donor')
  const { giftId, variety } = keepAsOffered(writing, { gift, donorId: personId, on, decision }, 'gift')
  const said =
    decision.kind === 'decline'
      ? message('intake.declined-because', { variety, reason: decision.reason })
      : message('intake.kept-later', { place: 'first', count: 1, names: { list: [variety] } })
  return { giftId, personId, said, undoable: true }
}

export const noteStep: Writes<'gift.record-step'> = (writing, input) => {
  const row = waitingOrRefuse(writing, input.giftId)
  const { step, note, due } = input
  if (input.done) noteEvent(writing, row.giftId, { kind: 'step-done', step, onDate: input.on, note })
  else noteEvent(writing, row.giftId, { kind: 'waits-for', step, onDate: input.on, due, note })
  const said = message(input.done ? 'intake.step-done' : 'intake.waits-for', {
    variety: row.variety,
    step: waitingTold(step),
  })
  return { gift: shown(writing, row), said, undoable: true }
}

export const declineGift: Writes<'gift.decline'> = (writing, input) => {
  const row = waitingOrRefuse(writing, input.giftId)
  noteEvent(writing, row.giftId, { kind: 'declined', onDate: writing.today, note: input.reason })
  const said = message('intake.declined-because', { variety: row.variety, reason: input.reason })
  return { gift: shown(writing, row), said, undoable: true }
}

export const acceptGift: Writes<'gift.accept'> = (writing, input) => {
  const row = waitingOrRefuse(writing, input.giftId)
  const { waitsFor } = giftStanding(eventsOf(writing.sqlite, row.giftId))
  if (waitsFor.length > 0 && input.reason === '') {
    const steps = { list: waitsFor.map(({ step }) => waitingTold(step)) }
    refuse('caution', message('intake.still-waits', { variety: row.variety, steps }), {
      field: 'reason',
      todo: message('intake.still-waits-todo'),
    })
  }
  const facts = input.gift ?? Gift.parse(JSON.parse(row.facts))
  const taken = takeInGift(writing, facts, row.donorId, input.receivedOn, 'gift')
  noteEvent(writing, row.giftId, {
    kind: 'accepted',
    onDate: input.receivedOn,
    note: input.reason,
    lotId: taken.lotId,
  })
  return { taken, said: tookIn([taken.lotNumber]), undoable: true }
}

export const listGifts: Reads<'gift.list'> = (reading, input) => {
  const gifts = giftRows(reading.sqlite, input.donorId ?? null)
    .map((row) => shown(reading, row))
    .filter((gift) => input.state === undefined || gift.state === input.state)
  const isAnyLate = (gift: WaitingGift) => gift.waitsFor.some((wait) => wait.late)
  return {
    gifts: gifts.toSorted((a, b) => Number(isAnyLate(b)) - Number(isAnyLate(a)) || a.giftId - b.giftId),
    quarantined: quarantinedLots(reading.sqlite).map((lot) => ({ ...lot, reason: reasonOf(lot.reason) })),
  }
}

function waitingOrRefuse(reading: Reading, giftId: number): GiftRow {
  const row = giftRows(reading.sqlite, null).find((gift) => gift.giftId === giftId)
  if (row === undefined) return refuse('not-found', message('intake.no-gift'), { field: 'giftId' })
  const { state } = giftStanding(eventsOf(reading.sqlite, giftId))
  if (state !== 'offered') {
    refuse('gift-decided', message('intake.decided', { variety: row.variety, state }), {
      field: 'giftId',
      todo: message('intake.decided-todo'),
    })
  }
  return row
}

function shown(reading: Reading, row: GiftRow): WaitingGift {
  const standing = giftStanding(eventsOf(reading.sqlite, row.giftId))
  return {
    giftId: row.giftId,
    offeredOn: row.offeredOn,
    donorId: row.donorId,
    donor: row.donor ?? '',
    variety: row.variety,
    crop: row.crop,
    amount: Gift.parse(JSON.parse(row.facts)).amount,
    state: standing.state,
    reason: standing.reason,
    waitsFor: standing.waitsFor.map(({ step, on, due, note }) => ({
      step,
      words: waitingTold(step),
      since: on,
      due,
      late: isLate({ due }, reading.today),
      note,
      caution: waitingCaution(step) ?? '',
    })),
    done: standing.done.map(({ step, on, note }: { step: Waiting; on: string; note: string }) => ({
      step,
      words: waitingTold(step),
      on,
      note,
    })),
    accessionNumber: row.accessionNumber ?? '',
    lotId: row.lotId,
    gift: Gift.parse(JSON.parse(row.facts)),
  }
}
