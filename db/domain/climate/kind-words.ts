import { type Message, message } from '../../messages/message.ts'

/** What a place is taken to be like where nobody measured, before and after it is called another kind of place. */
export interface KindChange {
  readonly celsiusBefore: number
  readonly celsiusAfter: number
  /** The place whose readings hold there before and after, or null. */
  readonly readFromBefore: string | null
  readonly readFromAfter: string | null
  /** Lots with seed there. */
  readonly lots: number
  /** Whether it freezes after, and did not before. */
  readonly beginsToFreeze: boolean
}

/** What calling a place another kind of place does to the climate that its seed is taken to have lain in, a sentence each. */
export function kindChangeInWords(change: KindChange): Message[] {
  const same =
    change.readFromBefore === change.readFromAfter &&
    (change.readFromAfter !== null || change.celsiusBefore === change.celsiusAfter)
  const told = same ? [unchangedInWords(change)] : changedInWords(change)
  return [...told, ...(change.beginsToFreeze ? [message('storage.kind-change-frost')] : [])]
}

function unchangedInWords({ readFromAfter: place, celsiusAfter }: KindChange): Message {
  return place === null
    ? message('storage.kind-change-same-warmth', { celsius: assumed(celsiusAfter) })
    : message('storage.kind-change-same-readings', { place })
}

function changedInWords(change: KindChange): Message[] {
  const { readFromBefore, readFromAfter, lots } = change
  const [was, now] = [assumed(change.celsiusBefore), assumed(change.celsiusAfter)]
  const forecasts = lots === 0 ? [] : [message('storage.kind-change-forecasts', { lots })]
  if (readFromAfter === null) {
    const changed =
      readFromBefore === null
        ? message('storage.kind-change-assumed', { was, now })
        : message('storage.kind-change-no-readings', { was: readFromBefore, now })
    return [changed, ...forecasts, message('storage.kind-change-read-it')]
  }
  return [
    readFromBefore === null
      ? message('storage.kind-change-to-readings', { was, now: readFromAfter })
      : message('storage.kind-change-other-readings', { was: readFromBefore, now: readFromAfter }),
    ...forecasts,
  ]
}

function assumed(celsius: number) {
  return { celsius, about: true }
}
