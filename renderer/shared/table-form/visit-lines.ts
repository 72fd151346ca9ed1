import { isAmiss, type UntoldProblems } from './refusals.ts'

/**
 * The lines of a visit at the table: those listed, the one being typed, and what was put aside for it.
 *
 * Nothing typed leaves a visit: a line taken up for a change puts the one being typed aside, and a line taken off the
 * list can be put back.
 */
export interface VisitLines<L extends { readonly id: string }> {
  readonly listed: readonly L[]
  readonly line: L
  /** The listed line that `line` is a change of, or null. */
  readonly changing: string | null
  readonly setAside: L | null
  readonly takenOff: { readonly line: L; readonly at: number } | null
}

export type LineStep =
  | { readonly kind: 'list-line'; readonly nextId: string }
  | { readonly kind: 'change-line'; readonly id: string }
  | { readonly kind: 'take-off'; readonly id: string }
  | { readonly kind: 'put-back' }

/** Makes an empty line; `after` is the line before it, whose season may stay. */
export type MakeLine<L> = (id: string, after?: L) => L

export function noLines<L extends { readonly id: string }>(line: L): VisitLines<L> {
  return { listed: [], line, changing: null, setAside: null, takenOff: null }
}

export function stepLines<L extends { readonly id: string }>(
  lines: VisitLines<L>,
  step: LineStep,
  make: MakeLine<L>,
): VisitLines<L> {
  switch (step.kind) {
    case 'list-line':
      return listLine(lines, make(step.nextId, lines.line))
    case 'change-line':
      return changeLine(lines, step.id)
    case 'take-off':
      return takeOff(lines, step.id, make)
    case 'put-back':
      return putBack(lines)
  }
}

function listLine<L extends { readonly id: string }>(lines: VisitLines<L>, empty: L): VisitLines<L> {
  const { line, changing } = lines
  const listed =
    changing === null
      ? [...lines.listed, line]
      : lines.listed.map((each) => (each.id === changing ? line : each))
  return { ...lines, listed, line: lines.setAside ?? empty, changing: null, setAside: null }
}

function changeLine<L extends { readonly id: string }>(lines: VisitLines<L>, id: string): VisitLines<L> {
  const line = lines.listed.find((each) => each.id === id)
  if (!line || lines.changing === id) return lines
  // A change that is under way goes back to the list as it is; what was set aside for it stays aside.
  const kept = lines.changing === null ? lines : listLine(lines, lines.line)
  return { ...kept, line, changing: id, setAside: kept.line }
}

function takeOff<L extends { readonly id: string }>(
  lines: VisitLines<L>,
  id: string,
  make: MakeLine<L>,
): VisitLines<L> {
  const at = lines.listed.findIndex((each) => each.id === id)
  const listedLine = lines.listed[at]
  if (!listedLine) return lines
  const listed = lines.listed.filter((each) => each.id !== id)
  if (lines.changing !== id) return { ...lines, listed, takenOff: { line: listedLine, at } }
  // The change being typed is the newest form of the line: that is what can be put back.
  const next = lines.setAside ?? make(`${id}-after`, lines.line)
  return { listed, line: next, changing: null, setAside: null, takenOff: { line: lines.line, at } }
}

function putBack<L extends { readonly id: string }>(lines: VisitLines<L>): VisitLines<L> {
  if (lines.takenOff === null) return lines
  const { line, at } = lines.takenOff
  return { ...lines, listed: lines.listed.toSpliced(at, 0, line), takenOff: null }
}

/** Whether nothing was listed, typed or taken off. */
export function isBlankLines<L extends { readonly id: string }>(
  { listed, line, takenOff }: VisitLines<L>,
  isUntouched: (line: L) => boolean,
): boolean {
  return listed.length === 0 && takenOff === null && isUntouched(line)
}

/** A visit with every line listed, or with the first one that lacks something taken up for a change. */
export interface ClosedLines<L extends { readonly id: string }, S extends string> {
  readonly lines: VisitLines<L>
  readonly problems: UntoldProblems<S> | null
}

/** What the lines of a table are: how one is made, and what it needs. */
export interface LineRules<L, S extends string> {
  readonly make: MakeLine<L>
  readonly isUntouched: (line: L) => boolean
  /** What a line lacks before it can be listed. */
  readonly problems: (line: L) => UntoldProblems<S>
  readonly nothingListed: UntoldProblems<S>
}

/** Closes a visit for saving: what is still being typed is listed, and every line is looked at once more. */
export function closeLines<L extends { readonly id: string }, S extends string>(
  lines: VisitLines<L>,
  rules: LineRules<L, S>,
  nextId: string,
): ClosedLines<L, S> {
  if (lines.changing !== null || !rules.isUntouched(lines.line)) {
    const problems = rules.problems(lines.line)
    if (isAmiss(problems)) return { lines, problems }
    return closeLines(stepLines(lines, { kind: 'list-line', nextId }, rules.make), rules, nextId)
  }
  for (const line of lines.listed) {
    const problems = rules.problems(line)
    if (isAmiss(problems)) return { lines: changeLine(lines, line.id), problems }
  }
  return { lines, problems: lines.listed.length > 0 ? null : rules.nothingListed }
}
