import { type Message, message } from '../../messages/message.ts'
import { saidOf } from './said.ts'

/** Why a lot is kept back, as the book keeps it: each reason once; null where there is none. */
export function keptReason(reasons: readonly Message[]): string | null {
  const [last, ...before] = [
    ...new Map(reasons.map((one) => [JSON.stringify(one), one])).values(),
  ].toReversed()
  if (last === undefined) return null
  return JSON.stringify(
    before.reduce((second, first) => message('quarantine-reason.also', { first, second }), last),
  )
}

/** The same as it is told: what somebody typed, and what older versions wrote, stays as it is. */
export function reasonOf(kept: string | null): Message | string {
  return saidOf(kept ?? '')
}
