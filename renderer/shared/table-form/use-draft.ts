import { useEffect, useReducer, useRef, useState } from 'react'
import type { CallInput, Value } from '../../../db/contract/contract.ts'
import { call } from '../client/call.ts'
import { createDraftKeeper, type DraftKeeper } from './draft-keeper.ts'

type DraftKind = CallInput<'draft.list'>['kind']
type KeptDraft = Value<'draft.list'>['drafts'][number]

/** The form in which drafts are kept. A draft of another form is left where it is. */
const FORM = 1

interface DraftRules<D, S> {
  readonly kind: DraftKind
  readonly blank: (key: string) => D
  readonly step: (draft: D, step: S) => D
  readonly isBlank: (draft: D) => boolean
}

/** An unfinished visit that this window is not working on. */
export interface OtherDraft<D> {
  readonly draftId: string
  /** When it was last kept; '' for the one this window has just put aside. */
  readonly keptAt: string
  readonly draft: D
}

/** The visit being entered, and what else was left unfinished. */
export interface KeptVisit<D, S> {
  /** Null until it is known whether an unfinished visit was kept. */
  readonly draft: D | null
  readonly dispatch: (step: S) => void
  readonly others: readonly OtherDraft<D>[]
  readonly goOnWith: (other: OtherDraft<D>) => void
  readonly letGo: (other: OtherDraft<D>) => void
  /** False when the last change could not be kept. */
  readonly kept: boolean
}

type Doing<D, S> = { readonly load: D } | { readonly step: S }

/**
 * The visit being entered at this window, kept key by key.
 *
 * After a reload this window goes on with its own visit; after the app was ended, with the one that was left. Another
 * window's visit is only offered, so that two tables never write over each other.
 */
export function useDraft<D, S>(rules: DraftRules<D, S>): KeptVisit<D, S> {
  const [draft, act] = useReducer(
    (was: D | null, doing: Doing<D, S>) =>
      'load' in doing ? doing.load : was === null ? was : rules.step(was, doing.step),
    null,
  )
  const [others, setOthers] = useState<readonly OtherDraft<D>[]>([])
  const [kept, setKept] = useState(true)
  const keeper = useRef<DraftKeeper | null>(null)
  const { kind, blank, isBlank } = rules

  const begin = (draftId: string, from: D) => {
    sessionStorage.setItem(ownName(kind), draftId)
    keeper.current = createDraftKeeper(
      (text) => call('draft.keep', { kind, draftId, text }),
      (outcome) => setKept(outcome === 'kept'),
    )
    act({ load: from })
  }
  // biome-ignore lint/correctness/useExhaustiveDependencies: looked for once, when the screen opens
  useEffect(() => {
    let left = false
    void findDrafts<D>(kind).then(({ own, rest }) => {
      if (left) return
      begin(own?.draftId ?? crypto.randomUUID(), own?.draft ?? blank(crypto.randomUUID()))
      setOthers(rest)
    })
    return () => {
      left = true
    }
  }, [])
  useEffect(() => {
    if (draft !== null) keeper.current?.keep(isBlank(draft) ? '' : JSON.stringify({ form: FORM, draft }))
  }, [draft, isBlank])

  return {
    draft,
    dispatch: (step) => act({ step }),
    others,
    goOnWith: (other) => {
      const own = sessionStorage.getItem(ownName(kind))
      setOthers((all) => [
        ...all.filter((each) => each.draftId !== other.draftId),
        ...(draft === null || own === null || isBlank(draft) ? [] : [{ draftId: own, keptAt: '', draft }]),
      ])
      begin(other.draftId, other.draft)
    },
    letGo: (other) => {
      setOthers((all) => all.filter((each) => each.draftId !== other.draftId))
      void call('draft.keep', { kind, draftId: other.draftId, text: '' })
    },
    kept,
  }
}

async function findDrafts<D>(kind: DraftKind): Promise<{
  readonly own: OtherDraft<D> | undefined
  readonly rest: readonly OtherDraft<D>[]
}> {
  const ownId = sessionStorage.getItem(ownName(kind))
  const { drafts } = await call('draft.list', { kind })
  const readable = drafts.flatMap((kept) => readDraft<D>(kept))
  const own =
    readable.find((kept) => kept.draftId === ownId) ??
    readable.find((kept) => kept.earlierRun && ownId === null)
  return { own, rest: readable.filter((kept) => kept !== own) }
}

function readDraft<D>({ draftId, keptAt, earlierRun, text }: KeptDraft) {
  try {
    const { form, draft } = JSON.parse(text) as { form: number; draft: D }
    return form === FORM ? [{ draftId, keptAt, earlierRun, draft }] : []
  } catch {
    return []
  }
}

function ownName(kind: DraftKind): string {
  return `own-draft/${kind}`
}
