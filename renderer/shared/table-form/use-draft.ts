import { useEffect, useReducer, useRef, useState } from 'react'
import type { CallInput, Value } from '../../../db/contract/contract.ts'
import { call } from '../client/call.ts'
import { sendOnLeaving } from '../client/transport.ts'
import { claimDraft, draftsOfOthers } from './draft-claim.ts'
import { createDraftSaver, type DraftSaver } from './draft-saver.ts'

type DraftKind = CallInput<'draft.list'>['kind']
type SavedDraft = Value<'draft.list'>['drafts'][number]

/** The form in which drafts are kept. A draft of another form is left where it is. */
const FORM = 1

export interface DraftRules<D, S> {
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
export interface DraftVisit<D, S> {
  /** Null until it is known whether an unfinished visit was kept. */
  readonly draft: D | null
  readonly dispatch: (step: S) => void
  readonly others: readonly OtherDraft<D>[]
  readonly goOnWith: (other: OtherDraft<D>) => void
  readonly discard: (other: OtherDraft<D>) => void
  /** False when the last change could not be kept. */
  readonly kept: boolean
}

type Doing<D, S> = { readonly load: D } | { readonly step: S }

/** What last kept a draft of a kind at this window: it may still be at it when the next screen asks for the draft. */
const keptLastBy = new Map<DraftKind, DraftSaver>()

/** The draft this window works on: how it is kept, and how its claim is given up. */
interface AtWork {
  readonly draftId: string
  readonly keeper: DraftSaver
  readonly giveUp: () => void
}

/**
 * The visit being entered at this window, kept key by key.
 *
 * After a reload this window goes on with its own visit; after the app was ended, with the one that was left. What
 * another window left is only offered, and what another is working on is not, so that two tables never write over each
 * other.
 */
export function useDraft<D, S>(rules: DraftRules<D, S>): DraftVisit<D, S> {
  const [draft, act] = useReducer(
    (was: D | null, doing: Doing<D, S>) =>
      'load' in doing ? doing.load : was === null ? was : rules.step(was, doing.step),
    null,
  )
  const [others, setOthers] = useState<readonly OtherDraft<D>[]>([])
  const [kept, setKept] = useState(true)
  const atWork = useRef<AtWork | null>(null)
  const { kind, blank, isBlank } = rules

  const begin = (draftId: string, from: D) => {
    sessionStorage.setItem(ownName(kind), draftId)
    atWork.current?.giveUp()
    const keeper = createDraftSaver(
      (text) => call('draft.save', { kind, draftId, text }),
      (outcome) => setKept(outcome === 'kept'),
    )
    atWork.current = { draftId, keeper, giveUp: claimDraft(draftId) }
    keptLastBy.set(kind, keeper)
    act({ load: from })
  }
  // biome-ignore lint/correctness/useExhaustiveDependencies: looked for once, when the screen opens
  useEffect(() => {
    let left = false
    // Where nobody answers, the table is there all the same: what was left unfinished is offered another time.
    const found = findDrafts<D>(kind).catch(() => ({ own: undefined, rest: [] }))
    void found.then(({ own, rest }) => {
      if (left) return
      begin(own?.draftId ?? crypto.randomUUID(), own?.draft ?? blank(crypto.randomUUID()))
      setOthers(rest)
    })
    return () => {
      left = true
      atWork.current?.giveUp()
    }
  }, [])
  useEffect(() => {
    if (draft !== null)
      atWork.current?.keeper.keep(isBlank(draft) ? '' : JSON.stringify({ form: FORM, draft }))
  }, [draft, isBlank])
  useEffect(() => {
    const leave = () => {
      const text = atWork.current?.keeper.unkept()
      if (atWork.current && typeof text === 'string')
        sendOnLeaving('draft.save', { kind, draftId: atWork.current.draftId, text })
    }
    window.addEventListener('pagehide', leave)
    return () => window.removeEventListener('pagehide', leave)
  }, [kind])

  const without = (gone: OtherDraft<D>) => others.filter(({ draftId }) => draftId !== gone.draftId)
  return {
    draft,
    dispatch: (step) => act({ step }),
    others,
    goOnWith: (other) => {
      const own = atWork.current?.draftId
      const aside =
        draft === null || own === undefined || isBlank(draft) ? [] : [{ draftId: own, keptAt: '', draft }]
      setOthers([...without(other), ...aside])
      begin(other.draftId, other.draft)
    },
    discard: (other) => {
      setOthers(without(other))
      void call('draft.save', { kind, draftId: other.draftId, text: '' })
    },
    kept,
  }
}

async function findDrafts<D>(kind: DraftKind): Promise<{
  readonly own: OtherDraft<D> | undefined
  readonly rest: readonly OtherDraft<D>[]
}> {
  const ownId = sessionStorage.getItem(ownName(kind))
  await keptLastBy.get(kind)?.settled()
  const claimed = await draftsOfOthers(ownId)
  const { drafts } = await call('draft.list', { kind })
  // A draft taken up in this run is kept anew at once: one of an earlier run is free, whatever dead window claims it.
  const free = drafts
    .filter(({ draftId, earlierRun }) => earlierRun || !claimed.has(draftId))
    .flatMap((kept) => readDraft<D>(kept))
  const own =
    free.find(({ draftId }) => draftId === ownId) ??
    free.find(({ earlierRun }) => earlierRun && ownId === null)
  return { own, rest: free.filter((kept) => kept !== own) }
}

function readDraft<D>({ draftId, keptAt, earlierRun, text }: SavedDraft) {
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
