import type { Handlers } from '../book/context.ts'
import { changeLetterWords, letterWords } from './letter-words.ts'
import { addPeriodLetters } from './period-letters.ts'
import { markPrinted, printAgain, printHistory } from './printed.ts'
import { listTray } from './tray-list.ts'

/** The operations that this room answers. */
export const printOperations = {
  'tray.list': listTray,
  'print.list': printHistory,
  'letter.get': letterWords,
  'tray.add-letters': addPeriodLetters,
  'tray.mark-printed': markPrinted,
  'print.repeat': printAgain,
  'letter.change': changeLetterWords,
} satisfies Partial<Handlers>
