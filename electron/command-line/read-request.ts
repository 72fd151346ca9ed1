import { isAbsolute, resolve } from 'node:path'
import { parseArgs } from 'node:util'
import { isLanguageCode, LANGUAGE_CODES, type LanguageCode } from '../../db/messages/languages.ts'
import { type Message, message } from '../../db/messages/message.ts'

/** What was asked on the command line. */
export type Request =
  | { readonly kind: 'list' }
  | {
      readonly kind: 'call'
      readonly file: string
      readonly operation: string
      readonly json: string
      /** What the answer is told in; null: the library's own. */
      readonly language: LanguageCode | null
    }
  | { readonly kind: 'not-understood'; readonly why: Message | string }

export const USAGE = `npm run -s call -- operations
    lists every operation: its name, whether it reads or writes, what it takes and answers, as JSON

npm run -s call -- --collection FILE [--language es] OPERATION 'JSON'
    runs one operation on a collection and prints its answer as JSON; the JSON may be - to read it from standard
    input, and {} may be left out. On Windows: echo {"lotId": 1} | npm run -s call -- --collection FILE lot.get -
    Ends with 0, or with 1 and the problem as JSON when nothing was done.`

/** How JSON reaches an operation whole: the shells of Windows keep no single quotes, or lose the double ones in them. */
export function howToGiveJson(platform: NodeJS.Platform): Message {
  return platform === 'win32'
    ? message('problem.json-from-before', {
        example: 'echo {"lotId": 1} | npm run -s call -- --collection FILE lot.get -',
      })
    : message('problem.json-in-quotes', { example: `'{"lotId": 1}'` })
}

/**
 * Reads the words after `npm run call --`. File names are taken from where npm was called: `calledFrom`.
 */
export function readRequest(args: readonly string[], calledFrom: string): Request {
  let parsed: {
    values: { collection?: string | undefined; language?: string | undefined }
    positionals: string[]
  }
  try {
    parsed = parseArgs({
      args: [...args],
      options: { collection: { type: 'string', short: 'c' }, language: { type: 'string', short: 'l' } },
      allowPositionals: true,
    })
  } catch (thrown) {
    return notUnderstood(thrown instanceof Error ? thrown.message : message('start.not-understood'))
  }
  const [operation, json = '{}', ...more] = parsed.positionals
  if (operation === undefined) return notUnderstood(message('call.name-operation'))
  if (more.length > 0) return notUnderstood(message('call.one-operation'))
  if (operation === 'operations') return { kind: 'list' }
  const { collection } = parsed.values
  if (collection === undefined || collection === '') {
    return notUnderstood(message('call.which-collection', { option: '--collection FILE' }))
  }
  const file = isAbsolute(collection) ? collection : resolve(calledFrom, collection)
  const { language = null } = parsed.values
  if (language !== null && !isLanguageCode(language)) {
    return notUnderstood(message('call.languages', { languages: { list: LANGUAGE_CODES } }))
  }
  return { kind: 'call', file, operation, json, language }
}

function notUnderstood(why: Message | string): Request {
  return { kind: 'not-understood', why }
}
