import { aGift, type TemporaryCollection } from './temporary-collection.ts'

/** Takes one gift in on a day, for what happened to it before today. */
export async function takeInOn(
  test: TemporaryCollection,
  receivedOn: string,
  more: Parameters<typeof aGift>[0] = {},
) {
  const { taken, entryId } = await test.call('intake.record', {
    donor: null,
    receivedOn,
    gifts: [aGift(more)],
  })
  const [first] = taken
  if (first === undefined) throw new Error('Nothing was taken in')
  return { ...first, entryId }
}
