import type { z } from 'zod'
import type { UntoldProblem } from '../../db/contract/problem.ts'
import type { says } from '../../db/contract/told.ts'
import { type Message, message } from '../../db/messages/message.ts'

type Issue = z.core.$ZodIssue

/** Marks where the contract wrote no sentence of its own: ours is made from the whole path. */
const NO_SENTENCE = ''
const MISSING = 'missing'

/** Parses without zod's own sentences, which speak to a programmer. */
export function parseInput<S extends z.ZodType>(schema: S, raw: unknown) {
  return schema.safeParse(raw, { error: (issue) => (issue.input === undefined ? MISSING : NO_SENTENCE) })
}

/** Says what is wrong with an input that does not fit the contract: the field, a sentence, never what was typed. */
export function problemOfInput(failure: z.core.$ZodError): UntoldProblem {
  const issue = innermost(failure.issues)
  const path = issue.code === 'unrecognized_keys' ? [...issue.path, issue.keys[0] ?? ''] : issue.path
  const field = path.length === 0 ? null : path.map(String).join('.')
  const choices = issue.code === 'invalid_value' ? issue.values.map(String) : []
  return {
    code: 'bad-request',
    sentence: sentenceOf(issue, nameOf(path)),
    field,
    todo: message('problem.change-it'),
    choices,
  }
}

/** The first issue; inside a choice of shapes, that of the shape which came nearest. */
function innermost(issues: readonly Issue[]): Issue {
  const [issue] = issues
  if (issue === undefined) throw new TypeError('A failed input has at least one issue')
  if (issue.code !== 'invalid_union' || issue.errors.length === 0) return issue
  const branches = issue.errors.filter((branch) => branch.length > 0)
  const nearest = branches.sort((a, b) => depth(b) - depth(a) || a.length - b.length)[0]
  if (nearest === undefined || depth(nearest) === 0) return issue
  const inner = innermost(nearest)
  return { ...inner, path: [...issue.path, ...inner.path] }
}

const depth = (branch: readonly Issue[]) => Math.max(...branch.map((issue) => issue.path.length))

/** The last name of a path as words: 'receivedOn' reads 'received on'. */
function nameOf(path: readonly PropertyKey[]): string | Message {
  const name = path.findLast((part) => typeof part === 'string')
  if (name === undefined) return message('problem.the-request')
  return `‘${name.replace(/[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`)}’`
}

/** What the contract itself says where a value does not fit. */
function isSaid(sentence: string): sentence is Parameters<typeof says>[0] {
  return /^fits\.[a-z0-9-]+$/.test(sentence)
}

function sentenceOf(issue: Issue, field: string | Message): string | Message {
  if (issue.message === MISSING) return message('problem.field-missing', { field })
  if (isSaid(issue.message)) return message(issue.message)
  if (issue.message !== NO_SENTENCE) return issue.message
  switch (issue.code) {
    case 'invalid_type':
      return message('problem.field-kind', { field, kind: issue.expected })
    case 'unrecognized_keys':
      return message('problem.field-unknown', { field })
    case 'invalid_value':
      return message('problem.field-one-of', { field, choices: { list: issue.values.map(String), as: 'or' } })
    case 'too_small': {
      const limit = String(issue.minimum)
      return message(issue.inclusive === false ? 'problem.field-more-than' : 'problem.field-at-least', {
        field,
        limit,
      })
    }
    case 'too_big': {
      const limit = String(issue.maximum)
      return message(issue.inclusive === false ? 'problem.field-less-than' : 'problem.field-at-most', {
        field,
        limit,
      })
    }
    case 'invalid_union':
      return message('problem.field-no-form', { field })
    default:
      return message('problem.field-not-so', { field })
  }
}
