import { isMessage, type Message } from './message.ts'

/** An answer in which every message, however deep, is told; everything else stays as it is. */
export function tellAll(answer: unknown, say: (told: Message) => string): unknown {
  if (typeof answer !== 'object' || answer === null) return answer
  if (isMessage(answer)) return say(answer)
  if (Array.isArray(answer)) return answer.map((part) => tellAll(part, say))
  if (Object.getPrototypeOf(answer) !== Object.prototype) return answer
  return Object.fromEntries(Object.entries(answer).map(([name, part]) => [name, tellAll(part, say)]))
}
