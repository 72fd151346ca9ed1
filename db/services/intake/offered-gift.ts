import { eq } from 'drizzle-orm'
import type { z } from 'zod'
import type { ParsedInput } from '../../contract/contract.ts'
import type { Gift } from '../../contract/intake-operations.ts'
import { refuse } from '../../contract/refusal.ts'
import { message } from '../../messages/message.ts'
import { giftEvent, gift as giftTable } from '../../schema/gift-tables.ts'
import { crop, variety } from '../../schema/reference-tables.ts'
import type { Reading, Writing } from '../book/context.ts'
import { cropOrRefuse } from '../book/crop-rows.ts'

type GiftFacts = z.output<typeof Gift>

interface Offered {
  readonly gift: GiftFacts
  readonly donorId: number | null
  readonly on: string
  readonly decision: ParsedInput<'gift.offer'>['decision']
}

/** Keeps a gift as it was offered: for later, or declined with the reason. `field` is where it stands in the input. */
export function keepAsOffered(
  writing: Writing,
  { gift, donorId, on, decision }: Offered,
  field: string,
): { giftId: number; variety: string } {
  const named = namedIn(writing, gift, field)
  const { id } = writing.db
    .insert(giftTable)
    .values({ donorId, offeredOn: on, ...named, facts: JSON.stringify(gift), entryId: writing.entryId })
    .returning({ id: giftTable.id })
    .get()
  if (decision.kind === 'decline') {
    noteEvent(writing, id, { kind: 'declined', onDate: on, note: decision.reason })
  } else {
    for (const { step, due, note } of decision.waitsFor) {
      noteEvent(writing, id, { kind: 'waits-for', step, onDate: on, due, note })
    }
  }
  return { giftId: id, variety: named.variety }
}

/** How a gift is named in a list: by its variety and crop, which may be new and not in the book yet. */
function namedIn(reading: Reading, facts: GiftFacts, field: string): { variety: string; crop: string } {
  if ('newVariety' in facts.variety) {
    const { newVariety } = facts.variety
    const ofCrop =
      'newCrop' in newVariety
        ? newVariety.newCrop.name
        : cropOrRefuse(reading, newVariety.cropId, `${field}.variety.newVariety.cropId`).commonName
    return { variety: newVariety.name, crop: ofCrop }
  }
  const known = reading.db
    .select({ variety: variety.name, crop: crop.commonName })
    .from(variety)
    .innerJoin(crop, eq(crop.id, variety.cropId))
    .where(eq(variety.id, facts.variety.varietyId))
    .get()
  return (
    known ??
    refuse('not-found', message('intake.no-variety'), {
      field: `${field}.variety`,
    })
  )
}

/** Writes what happened to a gift. */
export function noteEvent(
  writing: Writing,
  giftId: number,
  event: Omit<typeof giftEvent.$inferInsert, 'id' | 'giftId' | 'entryId'>,
): void {
  writing.db
    .insert(giftEvent)
    .values({ ...event, giftId, entryId: writing.entryId })
    .run()
}
