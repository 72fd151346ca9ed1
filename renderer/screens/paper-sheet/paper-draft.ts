import type { CallInput } from '../../../db/contract/contract.ts'
import { fold } from '../../../db/domain/shared/fold.ts'
import { message } from '../../../db/messages/message.ts'
import { amountProblem } from '../../shared/format/manner.ts'
import { emptyLotLine, isUntouchedLot, type LotLine } from '../../shared/table-form/lot-line.ts'
import {
  isNobodyYet,
  NO_PERSON_YET,
  type PersonDraft,
  whoIsIt,
} from '../../shared/table-form/person-draft.ts'
import { onlyProblems, type RefusalSteps, type UntoldProblems } from '../../shared/table-form/refusals.ts'
import {
  isBlankLines,
  type LineRules,
  noLines,
  type VisitLines,
} from '../../shared/table-form/visit-lines.ts'

/** One line of the sheet: who took how much of what. */
export interface PaperLine extends LotLine {
  readonly person: PersonDraft
}

/** A paper sheet while it is typed in; kept key by key. */
export interface PaperDraft {
  /** Names the intention to save, so that a save repeated after a crash acts once. */
  readonly key: string
  readonly on: string
  readonly lines: VisitLines<PaperLine>
}

export type PaperStep = 'on' | 'person' | 'lot' | 'amount'

function emptyPaperLine(id: string): PaperLine {
  return { ...emptyLotLine(id), person: NO_PERSON_YET }
}

export function emptyPaper(key: string): PaperDraft {
  return { key, on: '', lines: noLines(emptyPaperLine(`${key}-1`)) }
}

/** Everybody who is new on the sheet, each once. */
export function newOnSheet(listed: readonly PaperLine[]): readonly PersonDraft[] {
  const people = listed.flatMap(({ person }) => (person.is === 'new' ? [person] : []))
  return people.filter(
    (person, at) => people.findIndex(({ text }) => fold(text) === fold(person.text)) === at,
  )
}

/**
 * The lines after something was said of the person of the line being typed. A name that is new again further down the
 * sheet is the same new person: what was said of them is taken over.
 */
export function withPerson(
  lines: VisitLines<PaperLine>,
  change: Partial<PersonDraft>,
): VisitLines<PaperLine> {
  const said = { ...lines.line.person, ...change }
  const before =
    change.is === 'new'
      ? lines.listed.find(({ person }) => person.is === 'new' && fold(person.text) === fold(said.text))
      : undefined
  return { ...lines, line: { ...lines.line, person: before?.person ?? said } }
}

function isUntouched(line: PaperLine): boolean {
  return isNobodyYet(line.person) && isUntouchedLot(line)
}

export function isBlankPaper({ lines }: PaperDraft): boolean {
  return isBlankLines(lines, isUntouched)
}

/** What a line still lacks before it can be listed. */
function paperProblems({ person, lot, amount }: PaperLine): UntoldProblems<PaperStep> {
  return onlyProblems({
    person: whoIsIt(person) === undefined ? WHO : undefined,
    lot: lot === null ? WHICH : undefined,
    amount: amountProblem(amount),
  })
}

export const PAPER_LINES: LineRules<PaperLine, PaperStep> = {
  make: emptyPaperLine,
  isUntouched,
  problems: paperProblems,
  nothingListed: { person: message('paper-sheet.nothing-listed') },
}

export const PAPER_REFUSALS: RefusalSteps<PaperStep> = {
  field: { on: 'on' },
  line: (within) => (within === 'amount' ? 'amount' : within.startsWith('person') ? 'person' : 'lot'),
}

/** The sheet as the collection takes it. Only for lines without problems. */
export function sheetOf(
  { key, on }: PaperDraft,
  listed: readonly PaperLine[],
): CallInput<'paper-sheet.record'> {
  return {
    key,
    on,
    lines: listed.flatMap(({ person, lot, amount }) => {
      const who = whoIsIt(person)
      return who === undefined || lot === null ? [] : [{ person: who, lotId: lot.lotId, amount }]
    }),
  }
}

const WHO = message('paper-sheet.who-is-it')
const WHICH = message('paper-sheet.which-lot')
