import { type Message, message } from '../../messages/message.ts'

/** What became of a gift since it came. */
export interface GiftSoFar {
  /** People who took seed of it, each once; those who were not named do not count. */
  readonly takers: number
  readonly packets: number
  /** Lots that came back of it. */
  readonly regrown: number
  /** Of its latest test; null: never tested. */
  readonly sprouted: number | null
  readonly tested: number | null
}

/** What became of a gift, for its donor, a sentence each; none while nothing has. */
export function giftSoFar({ takers, packets, regrown, sprouted, tested }: GiftSoFar): Message[] {
  const out =
    takers > 0
      ? message('letters.so-far-takers', { people: takers })
      : message('letters.so-far-out', { times: packets })
  return [
    ...(packets === 0 ? [] : [out]),
    ...(regrown === 0 ? [] : [message('letters.so-far-regrown', { times: regrown })]),
    ...(sprouted === null || tested === null ? [] : [message('letters.so-far-tested', { tested, sprouted })]),
  ]
}
