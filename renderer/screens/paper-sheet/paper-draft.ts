import type { CallInput, Value } from '../../../db/contract/contract.ts'
import { fold } from '../../../db/domain/shared/fold.ts'
import { amountProblem } from '../../shared/format/manner.ts'
import {
  isNobodyYet,
  NO_PERSON_YET,
  type PersonDraft,
  whoIsIt,
} from '../../shared/table-form/person-draft.ts'
import {
  type ClosedLines,
  closeLines,
  type LineStep,
  noLines,
  stepLines,
  type VisitLines,
} from '../../shared/table-form/visit-lines.ts'

/** A lot as it was picked for a line. */
interface PickedLot {
  readonly lotId: number
  readonly lotNumber: string
  readonly variety: string
}

/** One line of the sheet: who took how much of what. */
export interface PaperLine {
  readonly id: string
  readonly person: PersonDraft
  /** The lot's text as typed, or its name once it is picked. */
  readonly text: string
  readonly lot: PickedLot | null
  readonly amount: string
}

/** A paper sheet while it is typed in; kept key by key. */
export interface PaperDraft {
  /** Names the intention to save, so that a save repeated after a crash acts once. */
  readonly key: string
  readonly on: string
  readonly lines: VisitLines<PaperLine>
}

export type PaperStep =
  | { readonly kind: 'on'; readonly on: string }
  | { readonly kind: 'person'; readonly change: Partial<PersonDraft> }
  | { readonly kind: 'line'; readonly change: Partial<PaperLine> }
  | { readonly kind: 'closed'; readonly lines: VisitLines<PaperLine> }
  | { readonly kind: 'next-sheet'; readonly key: string }
  | LineStep

export type PaperField = 'person' | 'lot' | 'amount'
export type PaperProblems = Partial<Record<PaperField, string>>

function emptyPaperLine(id: string): PaperLine {
  return { id, person: NO_PERSON_YET, text: '', lot: null, amount: '' }
}

export function emptyPaper(key: string): PaperDraft {
  return { key, on: '', lines: noLines(emptyPaperLine(`${key}-1`)) }
}

/** The sheet after one thing was done to it. Pure: names come in with the step. */
export function stepPaper(draft: PaperDraft, step: PaperStep): PaperDraft {
  const { lines } = draft
  switch (step.kind) {
    case 'on':
      return { ...draft, on: step.on }
    case 'person': {
      const person = personOnSheet({ ...lines.line.person, ...step.change }, step.change, lines.listed)
      return { ...draft, lines: { ...lines, line: { ...lines.line, person } } }
    }
    case 'line':
      return { ...draft, lines: { ...lines, line: { ...lines.line, ...step.change } } }
    case 'closed':
      return { ...draft, lines: step.lines }
    case 'next-sheet':
      return emptyPaper(step.key)
    default:
      return { ...draft, lines: stepLines(lines, step, emptyPaperLine) }
  }
}

/** Everybody who is new on the sheet, each once. */
export function newOnSheet(listed: readonly PaperLine[]): readonly PersonDraft[] {
  const people = listed.flatMap(({ person }) => (person.is === 'new' ? [person] : []))
  return people.filter(
    (person, at) => people.findIndex(({ text }) => fold(text) === fold(person.text)) === at,
  )
}

/** A name that is new again further down the sheet is the same new person: what was said of them is taken over. */
function personOnSheet(
  person: PersonDraft,
  change: Partial<PersonDraft>,
  listed: readonly PaperLine[],
): PersonDraft {
  if (change.is !== 'new') return person
  const before = listed.find(
    (line) => line.person.is === 'new' && fold(line.person.text) === fold(person.text),
  )
  return before?.person ?? person
}

function isUntouched(line: PaperLine): boolean {
  return isNobodyYet(line.person) && line.text.trim() === '' && line.amount.trim() === ''
}

export function isBlankPaper({ lines }: PaperDraft): boolean {
  return lines.listed.length === 0 && lines.takenOff === null && isUntouched(lines.line)
}

type PickedFrom = PickedLot & Pick<Value<'lot.get'>, 'packetSeeds'>

/** A line of a picked lot: one packet of the crop's usual size, unless an amount was typed before. */
export function withLot(line: PaperLine, picked: PickedFrom): Partial<PaperLine> {
  const { lotId, lotNumber, variety, packetSeeds } = picked
  const usual = packetSeeds === null ? '' : `1 packet of ${packetSeeds}`
  const typedBefore = line.lot === null && line.amount.trim() !== ''
  return {
    text: `${variety}, ${lotNumber}`,
    lot: { lotId, lotNumber, variety },
    amount: typedBefore ? line.amount : usual,
  }
}

/** What a line still lacks before it can be listed, by field. */
export function paperProblems(line: PaperLine): PaperProblems {
  const amount = amountProblem(line.amount)
  return {
    ...(whoIsIt(line.person) === undefined ? { person: WHO } : {}),
    ...(line.lot === null ? { lot: WHICH } : {}),
    ...(amount === undefined ? {} : { amount }),
  }
}

/** The lines closed for saving, or the first that lacks something; `nextId` names the empty line that is left. */
export function closePaper(draft: PaperDraft, nextId: string): ClosedLines<PaperLine, PaperProblems> {
  return closeLines<PaperLine, PaperProblems>(draft.lines, {
    make: emptyPaperLine,
    isUntouched,
    problems: paperProblems,
    nothingListed: { person: 'Nothing is listed yet. Type the first name on the sheet here.' },
    nextId,
  })
}

/** The sheet as the collection takes it. Only for lines without problems. */
export function sheetOf(draft: PaperDraft, listed: readonly PaperLine[]): CallInput<'paper-sheet.record'> {
  return {
    key: draft.key,
    on: draft.on,
    lines: listed.flatMap(({ person, lot, amount }) => {
      const who = whoIsIt(person)
      return who === undefined || lot === null ? [] : [{ person: who, lotId: lot.lotId, amount }]
    }),
  }
}

/** The line and its field that a problem's path names ('lines.0.amount'), or null for a path of another kind. */
export function paperFieldOf(
  path: string | null,
): { readonly line: number; readonly field: PaperField } | null {
  const parts = /^lines\.(\d+)(?:\.(\w+))?/.exec(path ?? '')
  if (!parts) return null
  const field = parts[2] === 'amount' ? 'amount' : parts[2] === 'person' ? 'person' : 'lot'
  return { line: Number(parts[1]), field }
}

const WHO = "Who took it? Type a few letters and choose, or choose 'The name cannot be read'."
const WHICH = 'Which lot was it? Scan its label, or type a few letters and choose from the list.'
