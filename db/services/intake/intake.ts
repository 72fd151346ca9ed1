import type { z } from 'zod'
import type { Result } from '../../contract/contract.ts'
import type { Gift, TakenIn } from '../../contract/intake-operations.ts'
import type { Untold } from '../../contract/told.ts'
import type { Amount } from '../../domain/amounts/amount.ts'
import { measuredOf } from '../../domain/amounts/amount.ts'
import { cautionTold } from '../../domain/cautions/caution-text.ts'
import { weightUnknown } from '../../domain/crops/unknown.ts'
import { keepingTold, usualPolicy } from '../../domain/keeping/keeping.ts'
import { bothNumbers } from '../../domain/ledger/movement.ts'
import { scanCode } from '../../domain/numbers/scan-code.ts'
import type { WeighedSample } from '../../domain/weights/hundred-seed-weight.ts'
import { type Message, message } from '../../messages/message.ts'
import { insertRow } from '../../queries/rows.ts'
import { indexAccession } from '../../queries/search-words.ts'
import { accession } from '../../schema/stock-tables.ts'
import { amountOrRefuse, heldIn, weightInForce } from '../book/amounts.ts'
import { setCaution } from '../book/cautions.ts'
import type { Writes, Writing } from '../book/context.ts'
import { writeLimits } from '../book/gift-limits.ts'
import { setKeeping } from '../book/keeping.ts'
import {
  type AccessionNumber,
  addLot,
  harvestColumns,
  lotOrRefuse,
  nextAccessionNumbers,
} from '../book/new-lot.ts'
import { personFor } from '../book/people.ts'
import { placeOrRefuse } from '../book/places.ts'
import { askIfBeforeHarvest } from '../book/possible-days.ts'
import { keptReason } from '../book/quarantine-reason.ts'
import { settingsOf } from '../book/settings.ts'
import { giftToTray } from '../book/tray.ts'
import { writeMovement } from '../book/write-movement.ts'
import { varietyFor } from '../collection/varieties.ts'
import { misweighed, sampleOrRefuse, saveWeight } from '../stock/seed-weights.ts'
import { keepAsOffered } from './offered-gift.ts'

type GiftInput = z.output<typeof Gift>
type Taken = Untold<z.output<typeof TakenIn>>

export const recordIntake: Writes<'intake.record'> = (writing, input) => {
  const personId = input.donor === null ? null : personFor(writing, input.donor, 'donor', 'donor')
  const taken: Taken[] = []
  const kept: Result<'intake.record'>['kept'] = []
  for (const [index, { decision, ...gift }] of input.gifts.entries()) {
    const field = `gifts.${index}`
    if (decision.kind === 'take-in') {
      taken.push(takeInGift(writing, gift, personId, input.receivedOn, field))
    } else {
      const offered = { gift, donorId: personId, on: input.receivedOn, decision }
      kept.push({ ...keepAsOffered(writing, offered, field), decision: decision.kind })
    }
  }
  return { personId, taken, kept, said: visitSaid(taken, kept), undoable: true }
}

/** What was done with the gifts of a visit: one sentence where it is the same for all of them. */
function visitSaid(taken: readonly Taken[], kept: Result<'intake.record'>['kept']): Message {
  const numbers = taken.map(({ lotNumber }) => lotNumber)
  const namesOf = (decision: 'later' | 'decline') =>
    kept.filter((gift) => gift.decision === decision).map(({ variety }) => variety)
  const [later, declined] = [namesOf('later'), namesOf('decline')]
  const done = (place: 'first' | 'inside') => [
    ...(numbers.length === 0 ? [] : [tookIn(numbers, place)]),
    ...(later.length === 0
      ? []
      : [message('intake.kept-later', { place, count: later.length, names: { list: later } })]),
    ...(declined.length === 0
      ? []
      : [message('intake.declined', { place, count: declined.length, names: { list: declined } })]),
  ]
  const [only, ...more] = done('first')
  return only === undefined || more.length > 0
    ? message('intake.visit', { done: { list: done('inside') } })
    : only
}

/** That lots were taken in; `inside` another sentence, or by itself. */
export function tookIn(numbers: readonly string[], place: 'first' | 'inside' = 'first'): Message {
  return message('intake.took-in', { place, count: numbers.length, numbers: { list: numbers } })
}

/** Takes one gift in: its accession, its lot, its first seed. `field` is where the gift stands in the input. */
export function takeInGift(
  writing: Writing,
  gift: GiftInput,
  donorId: number | null,
  receivedOn: string,
  field: string,
): Taken {
  const { variety, crop } = varietyFor(writing, gift.variety, `${field}.variety`)
  const amount = amountOrRefuse(settingsOf(writing), gift.amount, crop.packetSeeds, `${field}.amount`)
  const sample = sampleOrRefuse(settingsOf(writing), gift.sample, `${field}.sample`)
  const harvest = harvestColumns(gift.harvest, writing.today, `${field}.harvest`)
  if (gift.placeId !== null) placeOrRefuse(writing, gift.placeId, `${field}.placeId`)
  const [number] = nextAccessionNumbers(writing, [receivedOn]) as [AccessionNumber]
  const id = insertRow(writing.sqlite, accession, {
    ...number,
    varietyId: variety.id,
    donorId,
    receivedOn,
    grownAt: gift.grownAt,
    donorWords: gift.donorWords,
    story: gift.story,
    terms: gift.terms,
    entryId: writing.entryId,
  })
  if (gift.limits !== null) writeLimits(writing, id, gift.limits)
  const lot = addLot(
    writing,
    {
      accessionId: id,
      role: gift.role,
      basis: amount.kind === 'mass' ? 'weighed' : 'counted',
      estimated: amount.kind === 'count' && amount.estimated,
      ...harvest,
      grownAt: gift.grownAt,
      placeId: gift.placeId,
      quarantineReason: quarantineReason(gift),
    },
    receivedOn,
  )
  for (const caution of new Set(gift.cautions))
    setCaution(writing, { lotId: lot.id, caution, onDate: receivedOn, note: gift.cautionNote })
  const keeping = { breeding: gift.breeding, policy: gift.policy ?? usualPolicy(gift.breeding) }
  if (keepingTold(keeping) !== '')
    setKeeping(writing, {
      accessionId: id,
      breedingStatus: keeping.breeding,
      policy: keeping.policy,
      onDate: receivedOn,
      reason: '',
    })
  indexAccession(writing.sqlite, id)
  const warnings = fillLot(writing, lot.id, 'intake', amount, sample, receivedOn, donorId)
  giftToTray(writing, { accessionId: id, lotId: lot.id, donorId })
  return takenIn(writing, lot.id, warnings)
}

/** Puts the first seed into a new lot, by its own hundred-seed weight where a sample was weighed. */
export function fillLot(
  writing: Writing,
  lotId: number,
  kind: 'intake' | 'return',
  amount: Amount,
  sample: WeighedSample | null,
  on: string,
  personId: number | null,
): Taken['warnings'] {
  const kept = sample === null ? null : saveWeight(writing, lotId, on, [sample], false, '')
  const row = lotOrRefuse(writing, lotId, 'lotId')
  const harvested = { number: row.variety, harvest: row.harvestFrom }
  askIfBeforeHarvest(writing, { ...harvested, day: on, field: 'receivedOn' })
  const { weight, basis } = weightInForce(row)
  const both = bothNumbers(amount, weight)
  writeMovement(writing, { lotId, kind, on, change: both, measured: measuredOf(amount), weight, personId })
  const warnings = [
    kept === null ? null : misweighed(kept.hundredSeedWeightUg, row),
    basis === 'guess' && amount.kind === 'mass' ? weightUnknown(row.crop) : null,
  ]
  return warnings.filter((warning) => warning !== null)
}

/** What was taken in, as the table shows it. */
export function takenIn(writing: Writing, lotId: number, warnings: Taken['warnings']): Taken {
  const row = lotOrRefuse(writing, lotId, 'lotId')
  return {
    accessionId: row.accessionId,
    accessionNumber: row.accessionNumber,
    lotId: row.lotId,
    lotNumber: row.lotNumber,
    scanCode: scanCode(row.lotNumber),
    words: heldIn(row).words,
    quarantined: row.quarantineReason !== null,
    warnings,
  }
}

function quarantineReason(gift: GiftInput): string | null {
  return keptReason(gift.cautions.map((caution) => cautionTold(caution, gift.cautionNote)))
}
