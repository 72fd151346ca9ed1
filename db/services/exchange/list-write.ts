import { measuredOf } from '../../domain/amounts/amount.ts'
import { cautionText } from '../../domain/cautions/caution-text.ts'
import { bothNumbers } from '../../domain/ledger/movement.ts'
import { lotLetter } from '../../domain/numbers/lot-letter.ts'
import { bareNumber } from '../../domain/numbers/scan-code.ts'
import { fold } from '../../domain/shared/fold.ts'
import { hundredSeedWeight } from '../../domain/weights/hundred-seed-weight.ts'
import {
  addAccessionRow,
  addCaution,
  addDonorRow,
  addFirstLot,
  addIntake,
  addOtherName,
  addVarietyRow,
  makeDonor,
  noteFirstPlace,
  savePassportValue,
} from '../../queries/bulk-gifts.ts'
import { indexAccessions } from '../../queries/search-words.ts'
import { cropWeight } from '../book/amounts.ts'
import type { Writing } from '../book/context.ts'
import { type AccessionNumber, nextAccessionNumbers } from '../book/new-lot.ts'
import { createPlace } from '../book/places.ts'
import { saveWeight } from '../stock/seed-weights.ts'
import { type ListGift, yearsOf } from './list-gift.ts'

/** What was written of a list. */
export interface WrittenGift {
  readonly lotId: number
  readonly number: string
}

const FIRST_LETTER = lotLetter(1)

/** Writes the gifts of a list, each as taking it in at the table would, by statements prepared once. */
export function writeGifts(writing: Writing, gifts: readonly ListGift[]): WrittenGift[] {
  const { sqlite, entryId } = writing
  const made = new Map<string, number>()
  const once = (key: string, make: () => number) => {
    const id = made.get(key) ?? make()
    made.set(key, id)
    return id
  }
  const varietyOf = ({ variety, crop }: ListGift): number =>
    'known' in variety
      ? variety.known.id
      : once(`variety ${crop.id} ${fold(variety.fresh)}`, () =>
          addVarietyRow(sqlite, crop.id, variety.fresh, fold(variety.fresh)),
        )
  const donorOf = ({ donor }: ListGift): number | null => {
    if (donor === null) return null
    if ('known' in donor) return donor.known.id
    const { fresh: name, town } = donor
    return once(`person ${fold(name)} ${fold(town)}`, () =>
      addDonorRow(sqlite, { name, folded: fold(name), town, on: writing.today }),
    )
  }
  const placeOf = ({ place }: ListGift): number | null => {
    if (place === null) return null
    if ('known' in place) return place.known.id
    return once(`place ${fold(place.fresh)}`, () => newPlace(writing, place.fresh))
  }
  const numbers = nextAccessionNumbers(
    writing,
    gifts.map(({ receivedOn }) => receivedOn),
  )
  const written = gifts.map((gift, index) => {
    const [varietyId, donorId, placeId] = [varietyOf(gift), donorOf(gift), placeOf(gift)]
    for (const name of gift.otherNames) addOtherName(sqlite, varietyId, name, fold(name))
    if (donorId !== null) makeDonor(sqlite, donorId)
    const number = numbers[index] as AccessionNumber
    const { receivedOn, grownAt, story, terms } = gift
    const facts = { varietyId, donorId, receivedOn, grownAt, story, terms, entryId }
    const accessionId = addAccessionRow(sqlite, { ...number, ...facts })
    const lotNumber = `${number.number}-${FIRST_LETTER}`
    const [from, to] = yearsOf(gift.harvest)
    const lotId = addFirstLot(sqlite, {
      ...{ accessionId, number: lotNumber, bare: bareNumber(lotNumber), from, to, grownAt, placeId, entryId },
      basis: gift.amount?.kind === 'mass' ? 'weighed' : 'counted',
      estimated: gift.amount?.kind === 'count' && gift.amount.estimated ? 1 : 0,
      about: gift.harvest.kind === 'year' && gift.harvest.about ? 1 : 0,
      quarantineReason: gift.treated === null ? null : cautionText('treated', gift.treated),
    })
    if (gift.treated !== null) addCaution(sqlite, accessionId, 'treated', gift.treated)
    if (placeId !== null) noteFirstPlace(sqlite, lotId, placeId, receivedOn, entryId)
    putSeedIn(writing, lotId, gift, donorId)
    for (const [code, value] of gift.passport) savePassportValue(sqlite, accessionId, code, value, entryId)
    return { accessionId, lotId, number: number.number }
  })
  indexAccessions(sqlite, written[0]?.accessionId ?? 0, written.at(-1)?.accessionId ?? -1)
  return written
}

function putSeedIn(writing: Writing, lotId: number, gift: ListGift, personId: number | null): void {
  const { sample, amount, receivedOn: on } = gift
  const weight =
    sample === null
      ? cropWeight(gift.crop.hundred_seed_weight_ug)
      : hundredSeedWeight(saveWeight(writing, lotId, on, [sample], false, '').hundredSeedWeightUg)
  if (amount === null) return
  const { count, mass } = bothNumbers(amount, weight)
  const measured = measuredOf(amount)
  addIntake(writing.sqlite, { lotId, entryId: writing.entryId, on, count, mass, measured, weight, personId })
}

const KINDS = ['fridge', 'freezer', 'cupboard', 'shelf', 'jar', 'room'] as const

/** A place by the name that a list gives it; its kind is in its name, or it is a box. */
function newPlace(writing: Writing, name: string): number {
  const kind = KINDS.find((word) => fold(name).includes(word)) ?? 'box'
  return createPlace(writing, { key: '', name, kind, parentId: null }).placeId
}
