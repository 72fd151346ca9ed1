import { type Message, message } from '../messages/message.ts'
import type { Texts } from '../messages/texts.ts'
import type { FlowingPart } from './drawing/flowing-document.ts'
import { paragraphsIn } from './drawing/text-flow.ts'

/** What the sheet for a fire says. */
export interface FireSheet {
  readonly libraryName: string
  readonly date: string
  /** Names and numbers as the keeper typed them, a line each; empty: none. */
  readonly whomToCall: string
  /** The first to be carried out first. */
  readonly stops: readonly {
    readonly path: string
    readonly lost: Message
    readonly lots: readonly {
      readonly numbers: readonly string[]
      readonly seed: string
      readonly why: Message
    }[]
    /** Accessions that are not named. */
    readonly more: number
  }[]
  /** Lots that the book knows no place of. */
  readonly unplaced: number
  /** Lots that others hold. */
  readonly elsewhere: number
}

const text = paragraphsIn(10)
const LOT_INDENT = 10
/** Lines to write on where no number was typed. */
const TO_FILL = '_'.repeat(48)

/** The pages of the sheet: people first, then whom to call, then the places in order. */
export function fireSheetPart(sheet: FireSheet, texts: Texts): FlowingPart {
  const { text: told, say } = texts
  const heading = (words: string) =>
    text(words, 10, { face: 'semibold', size: 12, unbrokenWithNext: true, ruled: true })
  const numbers = sheet.whomToCall === '' ? [TO_FILL, TO_FILL] : sheet.whomToCall.split(/\r?\n/)
  return {
    name: message('fire-sheet.the-sheet'),
    texts,
    blocks: [
      text(`${sheet.libraryName} · ${sheet.date}`, 0, { size: 9 }),
      text(told('fire-sheet.title'), 2, { face: 'semibold', size: 18 }),
      text(told('fire-sheet.people-first'), 4, { face: 'bold', size: 13 }),
      heading(told('fire-sheet.whom-to-call')),
      ...numbers.map((line) => text(line, 2, { size: 11, indent: LOT_INDENT })),
      heading(told('fire-sheet.carry-out')),
      text(told('fire-sheet.carry-out-how'), 2),
      ...sheet.stops.flatMap(({ path, lost, lots, more }, index) => [
        text(`${index + 1}. ${path}`, 7, { face: 'semibold', size: 11, unbrokenWithNext: true }),
        text(say(lost), 1, { unbrokenWithNext: true }),
        ...lots.map(({ numbers: lotNumbers, seed, why }) =>
          text(`${lotNumbers.join(', ')} ${seed}: ${say(why)}`, 1, { size: 9, indent: LOT_INDENT }),
        ),
        ...(more === 0 ? [] : [text(told('fire-sheet.more', { more }), 1, { size: 9, indent: LOT_INDENT })]),
      ]),
      heading(told('fire-sheet.besides')),
      ...(sheet.elsewhere === 0 ? [] : [text(told('fire-sheet.elsewhere', { lots: sheet.elsewhere }), 2)]),
      ...(sheet.unplaced === 0 ? [] : [text(told('fire-sheet.unplaced', { lots: sheet.unplaced }), 2)]),
      text(told('fire-sheet.wet'), 2),
    ],
  }
}
