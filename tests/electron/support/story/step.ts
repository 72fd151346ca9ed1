import type { CallInput, OperationName, Value } from '../../../../db/contract/contract.ts'

/** What later steps need of earlier answers. */
export interface Facts {
  readonly lots: number[]
  entryId: number
  personId: number
  placeId: number
  cropId: string
  accessionId: number
  varietyId: number
  otherVarietyId: number
  splitLotId: number
  itemId: number
  batchId: number
  giftId: number
  withdrawalId: number
  memberId: number
  returnedLotId: number
  testId: number
  listId: number
  siteId: number
  growOutId: number
  recallId: number
  backup: string
  packed: string
}

/** What is known before the first step. */
export function noFacts(): Facts {
  return {
    lots: [],
    entryId: 0,
    personId: 0,
    placeId: 0,
    cropId: '',
    accessionId: 0,
    varietyId: 0,
    otherVarietyId: 0,
    splitLotId: 0,
    itemId: 0,
    batchId: 0,
    giftId: 0,
    withdrawalId: 0,
    memberId: 0,
    returnedLotId: 0,
    testId: 0,
    listId: 0,
    siteId: 0,
    growOutId: 0,
    recallId: 0,
    backup: '',
    packed: '',
  }
}

export interface Step<N extends OperationName = OperationName> {
  readonly name: N
  readonly input: (facts: Facts) => unknown
  readonly note: (facts: Facts, value: unknown) => void
}

/** A step of the story: an operation, its input from what earlier steps answered, and what to note of its answer. */
export function step<N extends OperationName>(
  name: N,
  input: (facts: Facts) => CallInput<N>,
  note: (facts: Facts, value: Value<N>) => void = () => {},
): Step {
  return { name, input, note: note as Step['note'] }
}

let keys = 0

/** The keys of the steps are the same each time the story is told. */
export function tellAfresh(): void {
  keys = 0
}

/** The key of one intention to write. */
export function key(): { key: string } {
  keys += 1
  return { key: `story-step-${keys}` }
}

/** A lot that the story has taken in, by its place. */
export const lot = (facts: Facts, index: number): number => {
  const id = facts.lots[index]
  if (id === undefined) throw new Error(`The story has taken in no lot ${index}`)
  return id
}
