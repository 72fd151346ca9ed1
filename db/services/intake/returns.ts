import type { ParsedInput } from '../../contract/contract.ts'
import { refuse } from '../../contract/refusal.ts'
import { cautionTold, harvestCaution } from '../../domain/cautions/caution-text.ts'
import { type ComesBack, mayHaveCrossed, questionsOf, whyToCheck } from '../../domain/intake/check-return.ts'
import { type Message, message } from '../../messages/message.ts'
import { type GrowOutRow, growOutOfVisit, seedOutFor } from '../../queries/grow-out-rows.ts'
import { type LotRow, lotsOfAccessions } from '../../queries/lot-rows.ts'
import { notUndone } from '../../queries/measurements.ts'
import { prepared } from '../../queries/prepared.ts'
import { insertRow } from '../../queries/rows.ts'
import { returnAnswer, seedReturn } from '../../schema/stock-tables.ts'
import { amountOrRefuse } from '../book/amounts.ts'
import { setCaution } from '../book/cautions.ts'
import type { Reading, Reads, Writes, Writing } from '../book/context.ts'
import { policyOf } from '../book/living-stock.ts'
import { addLot, harvestColumns, lotOrRefuse, noteParent } from '../book/new-lot.ts'
import { personFor } from '../book/people.ts'
import { placeOrRefuse } from '../book/places.ts'
import { keptReason, reasonOf } from '../book/quarantine-reason.ts'
import { cautionsTold } from '../book/seed-words.ts'
import { settingsOf } from '../book/settings.ts'
import { toTray } from '../book/tray.ts'
import { growOutOrRefuse } from '../regrow/grow-outs.ts'
import { sampleOrRefuse } from '../stock/seed-weights.ts'
import { fillLot, takenIn } from './intake.ts'

export const recordReturn: Writes<'return.record'> = (writing, input) => {
  const parent = lotOrRefuse(writing, input.parentLotId, 'parentLotId')
  if (input.withdrawalId !== null) withdrawalOrRefuse(writing, input.withdrawalId)
  const growOut = growOutOf(writing, input, parent.accessionId)
  const parents = growOut === null ? [parent] : parentsOf(writing, growOut, parent)
  if (input.placeId !== null) placeOrRefuse(writing, input.placeId, 'placeId')
  const personId = personFor(writing, input.person, 'grower', 'person')
  const amount = amountOrRefuse(settingsOf(writing), input.amount, parent.packetSeeds, 'amount')
  const sample = sampleOrRefuse(settingsOf(writing), input.sample, 'sample')
  const comesBack = knownOf(writing, parent, input)
  const waitsBecause = keptReason([
    ...whyToCheck(comesBack, settingsOf(writing).checkReturns === 'always'),
    ...whyInQuarantine(writing, input, parents),
  ])
  const lot = addLot(
    writing,
    {
      accessionId: parent.accessionId,
      role: 'working',
      basis: amount.kind === 'mass' ? 'weighed' : 'counted',
      estimated: amount.kind === 'count' && amount.estimated,
      ...harvestColumns(input.harvest, writing.today, 'harvest'),
      generation: Math.max(...parents.map(({ generation }) => generation)) + 1,
      growerId: personId,
      grownAt: input.grownAt,
      plantsGrown: input.plantsGrown,
      placeId: input.placeId,
      quarantineReason: waitsBecause,
    },
    input.receivedOn,
  )
  for (const { lotId } of parents) noteParent(writing, lot.id, lotId, 'grown')
  for (const caution of new Set(input.cautions))
    setCaution(writing, { lotId: lot.id, caution, onDate: input.receivedOn, note: input.cautionNote })
  if (mayHaveCrossed(comesBack) && !input.cautions.includes('possible-cross'))
    setCaution(writing, { lotId: lot.id, caution: 'possible-cross', onDate: input.receivedOn, note: '' })
  const warnings = [
    ...fillLot(writing, lot.id, 'return', amount, sample, input.receivedOn, personId),
    ...(waitsBecause === null ? [] : [message('intake.in-quarantine', { reason: reasonOf(waitsBecause) })]),
  ]
  toTray(writing, { kind: 'label', lotId: lot.id })
  writing.db
    .insert(seedReturn)
    .values({
      lotId: lot.id,
      withdrawalId: input.withdrawalId,
      personId,
      onDate: input.receivedOn,
      note: input.note,
      growOutId: growOut?.growOutId ?? null,
      entryId: writing.entryId,
    })
    .run()
  const { floweredNear, nearNote, odd } = input
  insertRow(writing.sqlite, returnAnswer, {
    ...{ lotId: lot.id, floweredNear, nearNote, odd, entryId: writing.entryId },
  })
  const taken = takenIn(writing, lot.id, warnings)
  const said = message('intake.took-back', { amount: taken.words, lot: lot.number })
  return { personId, taken, said, undoable: true }
}

export const previewReturn: Reads<'return.preview'> = (reading, input) => {
  const parent = lotOrRefuse(reading, input.parentLotId, 'parentLotId')
  return {
    questions: questionsOf(parent.matingSystem),
    waits: whyToCheck(knownOf(reading, parent, input), settingsOf(reading).checkReturns === 'always'),
  }
}

/** What is known of seed that was grown from a lot, as far as it decides whether it waits. */
function knownOf(
  reading: Reading,
  parent: LotRow,
  { plantsGrown: plants, floweredNear, odd }: ParsedInput<'return.preview' | 'return.record'>,
): ComesBack {
  const plantsWanted = policyOf(parent, settingsOf(reading)).plants
  return { matingSystem: parent.matingSystem, plants, plantsWanted, floweredNear, odd }
}

/**
 * Why a harvest is not handed out before somebody looked, whatever its crop: what was said of it when it came, what holds for
 * the seed it was grown from, and that seed of its accession is in quarantine.
 */
function whyInQuarantine(
  writing: Writing,
  { cautions, cautionNote }: ParsedInput<'return.record'>,
  parents: readonly LotRow[],
): Message[] {
  const parentIds = parents.map(({ lotId }) => lotId)
  const waiting = lotsOfAccessions(
    writing.sqlite,
    parents.map(({ accessionId }) => accessionId),
  ).filter((lot) => lot.quarantineReason !== null && (lot.balanceCount > 0 || parentIds.includes(lot.lotId)))
  return [
    ...cautions.map((caution) => cautionTold(caution, cautionNote)),
    ...cautionsTold(writing, parentIds).map(({ caution, note }) => harvestCaution(caution, note)),
    ...waiting.map(({ lotNumber }) => message('quarantine-reason.same-accession', { lot: lotNumber })),
  ]
}

function withdrawalOrRefuse(writing: Writing, id: number): void {
  const found = prepared(
    writing.sqlite,
    `SELECT 1 FROM withdrawal WHERE id = ? AND ${notUndone('withdrawal')}`,
  ).get(id)
  if (found === undefined) {
    refuse('not-found', message('intake.no-hand-out'), {
      field: 'withdrawalId',
      todo: message('intake.no-hand-out-todo'),
    })
  }
}

/** The grow-out that seed was harvested from: as named, or the one that its hand-out was for. */
function growOutOf(
  writing: Writing,
  { growOutId, withdrawalId }: ParsedInput<'return.record'>,
  accessionId: number,
): GrowOutRow | null {
  if (growOutId === null) {
    const found =
      withdrawalId === null ? undefined : growOutOfVisit(writing.sqlite, withdrawalId, accessionId)
    return found === undefined ? null : growOutOrRefuse(writing, found.growOutId)
  }
  const row = growOutOrRefuse(writing, growOutId)
  if (row.accessionId !== accessionId) {
    refuse('other-accession', message('intake.other-accession', { accession: row.accessionNumber }), {
      field: 'growOutId',
    })
  }
  return row
}

/** Every lot whose seed went out for a grow-out, beside the one that the keeper named. */
function parentsOf(writing: Writing, growOut: GrowOutRow, named: LotRow): LotRow[] {
  const ids = new Set(seedOutFor(writing.sqlite, growOut).map(({ lotId }) => lotId))
  const others = lotsOfAccessions(writing.sqlite, [named.accessionId]).filter(
    ({ lotId }) => ids.has(lotId) && lotId !== named.lotId,
  )
  return [named, ...others]
}
