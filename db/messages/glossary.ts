import { en } from './en/index.ts'
import type { MessageId } from './message.ts'

type Word = MessageId extends infer Id ? (Id extends `glossary.word.${infer W}` ? W : never) : never

const BEGIN = 'glossary.word.'

/** The words of the trade that the app explains, each by its name in the catalogue. */
export const GLOSSARY_WORDS = Object.keys(en).flatMap((id) =>
  id.startsWith(BEGIN) ? [id.slice(BEGIN.length) as Word] : [],
)
