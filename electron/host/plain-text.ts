import type { UntoldProblem } from '../../db/contract/problem.ts'
import { problem } from '../../db/contract/refusal.ts'
import { message } from '../../db/messages/message.ts'

/** Fields that hold a file or a search, which have their own reading of any byte. */
const ANY_TEXT: ReadonlySet<string> = new Set(['content', 'text'])

/** Why a text in an input is none that can be kept, or null: signs of no letter (NUL), and halves of letters. */
export function problemOfText(input: unknown): UntoldProblem | null {
  const field = unreadableIn(input, '')
  if (field === null) return null
  return problem('bad-request', message('problem.not-letters'), {
    field,
    todo: message('problem.change-it'),
  })
}

function unreadableIn(value: unknown, path: string): string | null {
  if (typeof value === 'string') return value.includes('\0') || !value.isWellFormed() ? path : null
  if (typeof value !== 'object' || value === null) return null
  for (const [name, part] of Object.entries(value)) {
    if (ANY_TEXT.has(name)) continue
    const found = unreadableIn(part, path === '' ? name : `${path}.${name}`)
    if (found !== null) return found
  }
  return null
}
