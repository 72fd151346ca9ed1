import type { DemoStep } from './demo-book.ts'
import type { RowOf } from './demo-tables.ts'

/** Gifts of one donor on one day, in rows that follow each other, are one entry. */
export function giftSteps(rows: readonly RowOf<'gifts'>[]): DemoStep[] {
  const visits: RowOf<'gifts'>[][] = []
  for (const row of rows) {
    const last = visits.at(-1)
    const same = last?.[0]?.cells.on === row.cells.on && last[0].cells.donor === row.cells.donor
    if (same) last.push(row)
    else visits.push([row])
  }
  return visits.map(giftStep)
}

function giftStep(rows: readonly RowOf<'gifts'>[]): DemoStep {
  const [first] = rows
  if (first === undefined) throw new Error('A visit without gifts')
  const { on, donor, lot } = first.cells
  return {
    on,
    where: first.where,
    async write(book) {
      const gifts = []
      for (const { cells } of rows) {
        gifts.push({
          variety: { varietyId: await book.variety(cells.variety) },
          harvest: cells.harvest,
          amount: cells.amount,
          sample: cells.sample,
          role: cells.role,
          placeId: cells.place === null ? null : await book.place(cells.place),
          grownAt: cells.grown_at,
          story: cells.story,
          terms: cells.terms,
          limits: cells.limits,
          cautions: cells.cautions,
          cautionNote: cells.caution_note,
        })
      }
      const who = donor === null ? null : { personId: await book.person(donor) }
      const { taken } = await book.write('intake.record', `gift-${lot}`, {
        donor: who,
        receivedOn: on,
        gifts,
      })
      for (const [index, { accessionId, lotId }] of taken.entries()) {
        const name = String(rows[index]?.cells.lot)
        book.remember('lot', name, lotId)
        book.remember('accession', name, accessionId)
      }
    },
  }
}

/** A gift kept for later with what it waits for, or declined. */
export function offerStep({ where, cells }: RowOf<'offers'>): DemoStep {
  const { gift, on, donor, harvest, amount, grown_at: grownAt, story, due, note, declined } = cells
  return {
    on,
    where,
    async write(book) {
      await book.write('gift.offer', `offer-${gift}`, {
        donor: donor === null ? null : { personId: await book.person(donor) },
        offeredOn: on,
        gift: { variety: { varietyId: await book.variety(cells.variety) }, harvest, amount, grownAt, story },
        decision:
          declined === ''
            ? { kind: 'later', waitsFor: cells.waits_for.map((step) => ({ step, due, note })) }
            : { kind: 'decline', reason: declined },
      })
    },
  }
}

export function returnStep({ where, cells }: RowOf<'returns'>): DemoStep {
  const { lot, on, person, parent, visit, place } = cells
  return {
    on,
    where,
    async write(book) {
      const { taken } = await book.write('return.record', `return-${lot}`, {
        person: { personId: await book.person(person) },
        parentLotId: book.idOf('lot', parent),
        withdrawalId: visit === null ? null : book.idOf('visit', visit),
        receivedOn: on,
        harvest: cells.harvest,
        amount: cells.amount,
        sample: cells.sample,
        plantsGrown: cells.plants,
        floweredNear: cells.near,
        grownAt: cells.grown_at,
        note: cells.note,
        placeId: place === null ? null : await book.place(place),
      })
      book.remember('lot', lot, taken.lotId)
      if (!taken.quarantined || !cells.checked) return
      const found = { dry: 'yes', clean: 'yes', trueToType: 'yes', comparedWith: 'description' } as const
      await book.write('return.check', `check-${lot}`, { lotId: taken.lotId, on, ...found, outcome: 'keep' })
    },
  }
}
