import type { GiftEvent } from '../domain/intake/waiting.ts'
import type { Sqlite } from '../migrations/connection.ts'
import { notUndone } from './measurements.ts'
import { joinCanonicalPerson } from './person-records.ts'
import { prepared } from './prepared.ts'

/** A gift as it was offered, with the lot it became. */
export interface GiftRow {
  readonly id: number
  readonly offered_on: string
  readonly donor_id: number | null
  readonly donor: string | null
  readonly variety: string
  readonly crop: string
  readonly facts: string
  readonly accession_number: string | null
  readonly lot_id: number | null
}

/** Gifts that stand, oldest first: of one donor, or of all. */
export function giftRows(sqlite: Sqlite, donorId: number | null): GiftRow[] {
  return prepared(
    sqlite,
    `SELECT gift.id, offered_on, who.id AS donor_id, who.name AS donor, gift.variety, gift.crop, facts,
       accession.number AS accession_number, lot.id AS lot_id
     FROM gift ${joinCanonicalPerson('who', 'gift.donor_id')}
     LEFT JOIN gift_event ON gift_event.gift_id = gift.id AND gift_event.kind = 'accepted' AND ${notUndone('gift_event')}
     LEFT JOIN lot ON lot.id = gift_event.lot_id LEFT JOIN accession ON accession.id = lot.accession_id
     WHERE (?1 IS NULL OR who.id = ?1) AND ${notUndone('gift')} ORDER BY offered_on, gift.id`,
  ).all({ 1: donorId }) as GiftRow[]
}

/** What happened to a gift and stands, oldest first. */
export function eventsOf(sqlite: Sqlite, giftId: number): GiftEvent[] {
  return prepared(
    sqlite,
    `SELECT kind, step, on_date AS "on", due, note FROM gift_event
     WHERE gift_id = ? AND ${notUndone('gift_event')} ORDER BY id`,
  ).all(giftId) as GiftEvent[]
}

/** Lots that are kept from being handed out until they are checked. */
export function quarantinedLots(sqlite: Sqlite) {
  return prepared(
    sqlite,
    `SELECT lot.id AS lotId, lot.number AS lotNumber, variety.name AS variety, crop.common_name AS crop,
       quarantine_reason AS reason
     FROM lot JOIN accession ON accession.id = accession_id JOIN variety ON variety.id = variety_id
     JOIN crop ON crop.id = crop_id WHERE quarantine_reason IS NOT NULL AND holds_seed = 1 ORDER BY lot.number`,
  ).all() as { lotId: number; lotNumber: string; variety: string; crop: string; reason: string }[]
}
