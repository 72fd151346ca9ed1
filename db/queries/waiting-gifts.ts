import { alias } from 'drizzle-orm/sqlite-core'
import type { GiftEvent } from '../domain/intake/waiting.ts'
import type { Sqlite } from '../migrations/connection.ts'
import { gift, giftEvent } from '../schema/gift-tables.ts'
import { person } from '../schema/reference-tables.ts'
import { accession, lot } from '../schema/stock-tables.ts'
import { columns, expression, orNull, pick, type RowOf, select } from './columns.ts'
import { notUndone } from './measurements.ts'
import { joinCanonicalPerson } from './person-records.ts'
import { JOIN_SEED, SEED_NAMES } from './seed-names.ts'

const who = alias(person, 'who')

const GIFT = columns({
  giftId: gift.id,
  ...pick(gift, 'offeredOn', 'variety', 'crop', 'facts'),
  donorId: orNull(who.id),
  donor: orNull(who.name),
  accessionNumber: orNull(accession.number),
  lotId: orNull(lot.id),
})

/** A gift as it was offered, with the lot it became. */
export type GiftRow = RowOf<typeof GIFT>

/** Gifts that stand, oldest first: of one donor, or of all. */
export function giftRows(sqlite: Sqlite, donorId: number | null): GiftRow[] {
  return select(
    sqlite,
    GIFT,
    (list) => `SELECT ${list} FROM gift ${joinCanonicalPerson('who', 'gift.donor_id')}
     LEFT JOIN gift_event ON gift_event.gift_id = gift.id AND gift_event.kind = 'accepted' AND ${notUndone('gift_event')}
     LEFT JOIN lot ON lot.id = gift_event.lot_id LEFT JOIN accession ON accession.id = lot.accession_id
     WHERE (?1 IS NULL OR who.id = ?1) AND ${notUndone('gift')} ORDER BY offered_on, gift.id`,
  ).all({ 1: donorId })
}

const EVENT = columns({ ...pick(giftEvent, 'kind', 'step', 'due', 'note'), on: giftEvent.onDate })

/** What happened to a gift and stands, oldest first. */
export function eventsOf(sqlite: Sqlite, giftId: number): GiftEvent[] {
  return select(
    sqlite,
    EVENT,
    (list) => `SELECT ${list} FROM gift_event
     WHERE gift_id = ? AND ${notUndone('gift_event')} ORDER BY id`,
  ).all(giftId) as GiftEvent[]
}

const QUARANTINED = columns({
  lotId: lot.id,
  lotNumber: lot.number,
  ...SEED_NAMES,
  reason: expression<string>('lot.quarantine_reason'),
})

/** Lots that are kept from being handed out until they are checked. */
export function quarantinedLots(sqlite: Sqlite) {
  return select(
    sqlite,
    QUARANTINED,
    (list) => `SELECT ${list} FROM lot ${JOIN_SEED}
     WHERE quarantine_reason IS NOT NULL AND holds_seed = 1 ORDER BY lot.number`,
  ).all()
}
