import type { z } from 'zod'
import type { Problem } from '../../db/contract/problem.ts'
import { problem } from '../../db/contract/refusal.ts'

type Issue = z.core.$ZodIssue

/** Marks where the contract wrote no sentence of its own: ours is made from the whole path. */
const NO_SENTENCE = ''
const MISSING = 'missing'

/** Parses without zod's own sentences, which speak to a programmer. */
export function parseInput<S extends z.ZodType>(schema: S, raw: unknown) {
  return schema.safeParse(raw, { error: (issue) => (issue.input === undefined ? MISSING : NO_SENTENCE) })
}

/** Says what is wrong with an input that does not fit the contract: the field, a sentence, never what was typed. */
export function problemOfInput(failure: z.core.$ZodError): Problem {
  const issue = innermost(failure.issues)
  const path = issue.code === 'unrecognized_keys' ? [...issue.path, issue.keys[0] ?? ''] : issue.path
  const field = path.length === 0 ? null : path.map(String).join('.')
  const choices = issue.code === 'invalid_value' ? issue.values.map(String) : []
  const todo = 'Nothing was written. Change it and try again.'
  return problem('bad-request', sentenceOf(issue, capital(inWords(path))), { field, todo, choices })
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
function inWords(path: readonly PropertyKey[]): string {
  const name = path.findLast((part) => typeof part === 'string')
  return name === undefined
    ? 'the request'
    : `‘${name.replace(/[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`)}’`
}

const KINDS: Readonly<Record<string, string>> = {
  string: 'text',
  number: 'a number',
  int: 'a whole number',
  boolean: 'yes or no',
  array: 'a list',
  object: 'a group of fields',
}

function sentenceOf(issue: Issue, field: string): string {
  if (issue.message === MISSING) return `${field} is missing.`
  if (issue.message !== NO_SENTENCE) return issue.message
  switch (issue.code) {
    case 'invalid_type':
      return `${field} must be ${KINDS[issue.expected] ?? issue.expected}.`
    case 'unrecognized_keys':
      return `${field} is not a field that is known here.`
    case 'invalid_value':
      return `${field} must be one of: ${issue.values.map(String).join(', ')}.`
    case 'too_small':
      return `${field} must be ${issue.inclusive === false ? 'more than' : 'at least'} ${issue.minimum}.`
    case 'too_big':
      return `${field} must be ${issue.inclusive === false ? 'less than' : 'at most'} ${issue.maximum}.`
    case 'invalid_union':
      return `${field} fits none of the forms it may have.`
    default:
      return `${field} is not written as it must be.`
  }
}

const capital = (words: string) => words.replace(/^[a-z]/, (letter) => letter.toUpperCase())
