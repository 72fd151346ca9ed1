import { measuredOf } from '../../domain/amounts/amount.ts'
import { cautionTold } from '../../domain/cautions/caution-text.ts'
import { bothNumbers } from '../../domain/ledger/movement.ts'
import { lotLetter } from '../../domain/numbers/lot-letter.ts'
import { bareNumber } from '../../domain/numbers/scan-code.ts'
import { fold } from '../../domain/shared/fold.ts'
import { hundredSeedWeight } from '../../domain/weights/hundred-seed-weight.ts'
import { insertRow } from '../../queries/rows.ts'
import { indexAccessions } from '../../queries/search-words.ts'
import { accessionPassport } from '../../schema/list-tables.ts'
import { person, personRole, variety, varietySynonym } from '../../schema/reference-tables.ts'
import { accession, lot } from '../../schema/stock-tables.ts'
import { cropWeight } from '../book/amounts.ts'
import { setCaution } from '../book/cautions.ts'
import type { Writing } from '../book/context.ts'
import { writeLimits } from '../book/gift-limits.ts'
import { type AccessionNumber, nextAccessionNumbers } from '../book/new-lot.ts'
import { createPlace, notePlace } from '../book/places.ts'
import { keptReason } from '../book/quarantine-reason.ts'
import { writeMovement } from '../book/write-movement.ts'
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
  const varietyOf = ({ variety: named, crop }: ListGift): number => {
    if ('known' in named) return named.known.id
    const row = { cropId: crop.id, name: named.fresh, nameFolded: fold(named.fresh), story: '' }
    return once(`variety ${crop.id} ${row.nameFolded}`, () => insertRow(sqlite, variety, row))
  }
  const donorOf = ({ donor }: ListGift): number | null => {
    if (donor === null) return null
    if ('known' in donor) return donor.known.id
    const { fresh: name, town } = donor
    const row = { name, nameFolded: fold(name), town, creditAs: '', note: '', createdOn: writing.today }
    return once(`person ${row.nameFolded} ${fold(town)}`, () => insertRow(sqlite, person, row))
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
    for (const name of gift.otherNames)
      insertRow(sqlite, varietySynonym, { varietyId, name, nameFolded: fold(name) }, 'there')
    if (donorId !== null) insertRow(sqlite, personRole, { personId: donorId, role: 'donor' }, 'there')
    const number = numbers[index] as AccessionNumber
    const { receivedOn, grownAt, story, terms } = gift
    const facts = { varietyId, donorId, receivedOn, grownAt, story, terms, entryId }
    const accessionId = insertRow(sqlite, accession, { ...number, ...facts })
    if (gift.limits !== null) writeLimits(writing, accessionId, gift.limits)
    const lotNumber = `${number.number}-${FIRST_LETTER}`
    const [harvestFrom, harvestTo] = yearsOf(gift.harvest)
    const lotId = insertRow(sqlite, lot, {
      ...{ accessionId, ordinal: 1, number: lotNumber, bare: bareNumber(lotNumber), role: 'working' },
      ...{ generation: 0, harvestFrom, harvestTo, grownAt, placeId, heldBy: '', entryId },
      ...{ balanceCount: 0, balanceMassMg: 0 },
      basis: gift.amount?.kind === 'mass' ? 'weighed' : 'counted',
      estimated: gift.amount?.kind === 'count' && gift.amount.estimated,
      harvestAbout: gift.harvest.kind === 'year' && gift.harvest.about,
      quarantineReason: gift.treated === null ? null : keptReason([cautionTold('treated', gift.treated)]),
    })
    if (gift.treated !== null)
      setCaution(writing, { lotId, caution: 'treated', onDate: receivedOn, note: gift.treated })
    if (placeId !== null) notePlace(writing, lotId, placeId, receivedOn)
    putSeedIn(writing, lotId, gift, donorId)
    for (const [code, value] of gift.passport)
      insertRow(sqlite, accessionPassport, { accessionId, code, value, entryId })
    return { accessionId, lotId, number: number.number }
  })
  indexAccessions(sqlite, written[0]?.accessionId ?? 0, written.at(-1)?.accessionId ?? -1)
  return written
}

function putSeedIn(writing: Writing, lotId: number, gift: ListGift, personId: number | null): void {
  const { sample, amount, receivedOn: on } = gift
  const weight =
    sample === null
      ? cropWeight(gift.crop.hundredSeedWeightUg)
      : hundredSeedWeight(saveWeight(writing, lotId, on, [sample], false, '').hundredSeedWeightUg)
  if (amount === null) return
  const change = bothNumbers(amount, weight)
  writeMovement(writing, {
    lotId,
    kind: 'intake',
    on,
    change,
    measured: measuredOf(amount),
    weight,
    personId,
  })
}

/** Words for kinds of places, folded, in the languages shipped. Common practice, no source. */
const KINDS = [
  ['fridge', /fridge|refrigerator|nevera|frigorifico|refrigerador|heladera/],
  ['freezer', /freezer|congelador/],
  ['cupboard', /cupboard|armario|alacena/],
  ['shelf', /shelf|estante/],
  ['jar', /jar\b|tarro|frasco|bote\b/],
  ['room', /room|habitacion|cuarto\b|sala\b|sotano|bodega/],
] as const

/** A place by the name that a list gives it; its kind is in its name, or it is a box. */
function newPlace(writing: Writing, name: string): number {
  const [kind] = KINDS.find(([, words]) => words.test(fold(name))) ?? ['box' as const]
  return createPlace(writing, { key: '', name, kind, parentId: null }).placeId
}
