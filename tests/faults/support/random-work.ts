import type { CallInput, WriteName } from '../../../db/contract/contract.ts'
import type { ServiceName } from '../../../db/services/run-operation.ts'

/** One write that a keeper might ask for: its name and its whole input, key and all. */
export interface Asked {
  readonly key: string
  readonly name: WriteName & ServiceName
  readonly input: { readonly key: string }
}

/** What random work may refer to: lots and entries that the file held when the work began, and what came since. */
export interface KnownRows {
  readonly lotIds: number[]
  readonly entryIds: number[]
}

const ON = '2026-03-14'
const CROPS = ['bean', 'pea', 'tomato', 'maize'] as const

/** Makes up the next write of a random day at the table; some of them will be refused, as a keeper's would. */
export function nextWork(random: () => number, key: string, known: KnownRows): Asked {
  const whole = (from: number, to: number) => from + Math.floor(random() * (to - from + 1))
  const oneOf = <T>(list: readonly T[]): T | undefined => list[whole(0, list.length - 1)]
  const work = <N extends WriteName & ServiceName>(name: N, input: Omit<CallInput<N>, 'key'>): Asked => ({
    key,
    name,
    input: { key, ...input },
  })
  const amount = () =>
    oneOf([`${whole(1, 400)} seeds`, `${whole(1, 90_000)} mg`, `about ${whole(1, 300)}`]) ?? ''
  const lotId = oneOf(known.lotIds)
  const entryId = oneOf(known.entryIds)
  const kind = whole(0, 11)
  if (lotId === undefined || entryId === undefined || kind <= 1) {
    const name = `Variety ${whole(1, 30)}`
    const cropId = oneOf(CROPS) ?? 'bean'
    const gifts = Array.from({ length: whole(1, 4) }, () => ({
      variety: { newVariety: { cropId, name } },
      amount: `${whole(5, 200)} g`,
    }))
    const donor = { newPerson: { name: `Donor ${whole(1, 40)}`, phone: '555 0100' } }
    return work('intake.record', { donor, receivedOn: ON, gifts })
  }
  switch (kind) {
    case 2:
      return work('lot.discard', { lotId, on: ON, amount: amount(), reason: 'mould' })
    case 3:
      return work('lot.record-count', { lotId, on: ON, found: amount(), reason: 'counted' })
    case 4:
      return work('lot.split', { lotId, on: ON, amount: amount(), role: 'reserve' })
    case 5:
      return work('lot.merge', { intoLotId: lotId, fromLotIds: [oneOf(known.lotIds) ?? lotId], on: ON })
    case 6:
      return work('lot.record-weight', {
        lotId,
        on: ON,
        replicates: [{ seeds: 50, grams: whole(5, 300) / 10 }],
      })
    case 7:
      return work('germination.record', { lotId, on: ON, tested: whole(1, 50), sprouted: 0 })
    case 8:
      return work('entry.undo', { entryId })
    default:
      return work('withdrawal.record', {
        person: null,
        on: ON,
        lines: [{ lotId, amount: amount() }],
        despite: ['too-few-left', 'reserve'],
        reason: 'a busy day',
      })
  }
}
