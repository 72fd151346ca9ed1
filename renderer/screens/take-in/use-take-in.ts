import { type RefObject, useState } from 'react'
import { flushSync } from 'react-dom'
import type { Problem } from '../../../db/contract/problem.ts'
import { ProblemError } from '../../shared/client/problem-error.ts'
import { useWrite } from '../../shared/client/use-write.ts'
import {
  type PersonField,
  personFieldOf,
  STEP_OF_PERSON_FIELD,
} from '../../shared/table-form/person-draft.ts'
import type { PersonProblems } from '../../shared/table-form/person-fields.tsx'
import { focusStepNamed } from '../../shared/table-form/steps.ts'
import { useHeldKeys } from '../../shared/table-form/use-held-keys.ts'
import { type GiftLine, type GiftProblems, giftFieldOf, giftProblems } from './gift-line.ts'
import { closeVisit, type TakeInDraft, type TakeInStep, visitOf } from './take-in-draft.ts'
import type { SavedVisit } from './taken-in.tsx'

interface Table {
  readonly draft: TakeInDraft
  readonly visit: { readonly dispatch: (step: TakeInStep) => void }
  readonly today: string
  readonly thisYear: number
  readonly form: RefObject<HTMLElement | null>
  readonly onSaved: (saved: SavedVisit) => void
}

interface Problems {
  readonly donor: PersonProblems
  readonly gift: GiftProblems
}

const NO_PROBLEMS: Problems = { donor: {}, gift: {} }
const FIRST_FIELD = [
  'variety',
  'crop',
  'harvest',
  'amount',
  'sample',
  'grownAt',
  'donorWords',
  'story',
  'terms',
  'cautionNote',
  'reason',
] as const
const STEP_OF: Readonly<Record<string, string>> = {
  grownAt: 'grown-at',
  donorWords: 'donor-words',
  cautionNote: 'caution-note',
}

/** What the keys and buttons of the Take in table do, and what is wrong where. */
export function useTakeIn({ draft, visit, today, thisYear, form, onSaved }: Table) {
  const [problems, setProblems] = useState<Problems>(NO_PROBLEMS)
  const [refused, setRefused] = useState<Problem | null>(null)
  const record = useWrite('intake.record')
  const { dispatch } = visit

  const focus = (step: string) => {
    if (form.current) focusStepNamed(form.current, step)
  }
  const showGiftProblems = (gift: GiftProblems) => {
    const first = FIRST_FIELD.find((field) => gift[field] !== undefined)
    flushSync(() => {
      setProblems({ donor: {}, gift })
      if (first !== undefined && BEHIND_MORE.has(first)) dispatch({ kind: 'line', change: { more: true } })
    })
    if (first) focus(STEP_OF[first] ?? first)
  }
  const showDonorProblem = (field: PersonField, sentence: string) => {
    flushSync(() => setProblems({ donor: { [field]: sentence }, gift: {} }))
    focus(STEP_OF_PERSON_FIELD[field])
  }
  const change = (step: TakeInStep) => {
    if (problems !== NO_PROBLEMS) setProblems(NO_PROBLEMS)
    if (refused) setRefused(null)
    dispatch(step)
  }

  const listGift = () => {
    const gift = giftProblems(draft.gifts.line, thisYear)
    if (Object.keys(gift).length > 0) return showGiftProblems(gift)
    flushSync(() => change({ kind: 'list-line', nextId: crypto.randomUUID() }))
    focus('variety')
  }
  const held = useHeldKeys()
  /** Returns whether it was saved. */
  const save = async (): Promise<boolean> => {
    const closed = closeVisit(draft, thisYear, crypto.randomUUID())
    const { listed } = closed.lines
    flushSync(() => change({ kind: 'closed', gifts: closed.lines }))
    const input = visitOf(draft, listed, today)
    if (closed.problems) showGiftProblems(closed.problems)
    else if (input === null) showDonorProblem('person', WHO)
    if (closed.problems || input === null) return false
    try {
      const { taken } = await record.mutateAsync(input)
      flushSync(() => onSaved({ donor: donorInWords(draft), gifts: listed, taken }))
      return true
    } catch (thrown) {
      if (!(thrown instanceof ProblemError)) throw thrown
      refuse(thrown.problem, listed)
      return false
    }
  }
  /** Puts the sentence of a refusal at the field it concerns; the gift is taken up for a change. */
  const refuse = (problem: Problem, sent: readonly GiftLine[]) => {
    const donor = personFieldOf('donor', problem.field)
    if (donor) return showDonorProblem(donor, problem.sentence)
    const at = giftFieldOf(problem.field)
    const gift = at && sent[at.gift]
    if (!at || !gift) return setRefused(problem)
    flushSync(() => dispatch({ kind: 'change-line', id: gift.id }))
    showGiftProblems({ [at.field]: problem.sentence })
  }
  return {
    problems,
    refused,
    saving: record.isPending,
    change,
    listGift,
    decide: (decision: GiftLine['decision']) => {
      flushSync(() => change({ kind: 'line', change: { decision } }))
      focus(STEP_OF_DECISION[decision])
    },
    backToGift: () => focus('variety'),
    catches: held.catches,
    save: () => void held.holdUntil(save),
    openMore: () => {
      flushSync(() => dispatch({ kind: 'line', change: { more: true } }))
      focus('grown-at')
    },
    changeGift: (id: string) => {
      flushSync(() => change({ kind: 'change-line', id }))
      focus('variety')
    },
  }
}

const STEP_OF_DECISION = { 'take-in': 'amount', later: 'waits-for', decline: 'reason' } as const
const WHO = "Who brings it? Type a few letters and choose, or choose 'Nobody knows'."
const BEHIND_MORE: ReadonlySet<string> = new Set(['grownAt', 'donorWords', 'story', 'terms', 'cautionNote'])

function donorInWords(draft: TakeInDraft): string {
  return draft.donor.is === 'nobody' ? 'somebody unknown' : draft.donor.text
}
