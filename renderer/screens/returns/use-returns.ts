import { useState } from 'react'
import { flushSync } from 'react-dom'
import type { VisitOut } from '../../../db/contract/withdrawal-operations.ts'
import { useRead } from '../../shared/client/use-read.ts'
import { useTexts } from '../../shared/format/use-texts.ts'
import { useLotScan } from '../../shared/scans/scans.ts'
import { isNobodyYet, type PersonDraft } from '../../shared/table-form/person-draft.ts'
import { isAmiss } from '../../shared/table-form/refusals.ts'
import type { OpenTable } from '../../shared/table-form/table-draft.tsx'
import { useNewest } from '../../shared/table-form/use-newest.ts'
import { useTable } from '../../shared/table-form/use-table.ts'
import { useWhen } from '../../shared/table-form/use-when.ts'
import {
  grownFrom,
  nextReturn,
  type Parent,
  RETURN_REFUSALS,
  type ReturnDraft,
  returnOf,
  returnProblems,
  withPerson,
  withSaved,
} from './return-draft.ts'
import type { TakenBack } from './returned-list.tsx'

const NO_VISITS: readonly VisitOut[] = []

/** What the keys, scans and buttons of the Take back table do, and what is wrong where. */
export function useReturns(open: OpenTable<ReturnDraft>) {
  const { t } = useTexts()
  const { draft } = open
  const { person, line } = draft
  const [taken, setTaken] = useState<readonly TakenBack[]>([])
  const table = useTable(open, {
    first: isNobodyYet(person) ? 'person' : 'lot',
    writes: 'return.record',
    refusals: RETURN_REFUSALS,
  })
  const { personId } = person
  const out = useRead('withdrawal.list-open', personId === null ? null : { personId })
  const visits = personId === null ? NO_VISITS : (out.data?.visits ?? NO_VISITS)
  // What somebody has out decides where the keys lead and which promise a lot keeps.
  const whenOutKnown = useWhen(personId === null || !out.isFetching)

  const pickLot = (lot: Pick<Parent, 'lotId' | 'lotNumber' | 'variety'>, from = visits) =>
    table.setIn('line', grownFrom(lot, from))
  /** Returns whether it was saved. */
  const save = async (): Promise<boolean> => {
    const input = returnOf(draft, open.today)
    const problems = returnProblems(line, open.thisYear, t)
    const lacks = isAmiss(problems)
    if (person.is !== 'open' && lacks) table.show(problems)
    else if (input === null) table.show({ person: t('returns.who-problem') })
    if (lacks || input === null) return false
    const saved = await table.write(input)
    flushSync(() => {
      table.change((was) => withSaved(was, saved.personId, crypto.randomUUID()))
      setTaken((before) => [takenBack(draft, saved.taken), ...before])
    })
    await whenOutKnown()
    table.focus('out', 'lot')
    return true
  }
  const scanNow = useNewest(pickLot)
  useLotScan(async (lot) => {
    await whenOutKnown()
    flushSync(() => scanNow.current(lot))
    table.focus('harvest')
  }, table.refuse)
  return {
    table,
    taken,
    visits,
    setPerson: (change: Partial<PersonDraft>) => {
      table.change((was) => withPerson(was, change))
      if (typeof change.personId !== 'number') return
      void table.held.holdUntil(async () => {
        await Promise.resolve()
        await whenOutKnown()
        table.focus('out')
        return true
      })
    },
    pickLot,
    /** Takes a lot of one visit, and goes on to what is asked of it. */
    pickOut: (lot: VisitOut['lots'][number], of: VisitOut) => {
      flushSync(() => pickLot(lot, [of]))
      table.focus('harvest')
    },
    save: () => void table.held.holdUntil(() => table.attempt(save)),
    nextPerson: () => {
      flushSync(() => {
        table.change((was) => nextReturn(was, crypto.randomUUID()))
        setTaken([])
      })
      table.focus('person')
    },
  }
}

function takenBack({ line: { parent, meets }, person }: ReturnDraft, lot: TakenBack['lot']): TakenBack {
  return {
    lot,
    person: person.text,
    variety: parent?.variety ?? '',
    parentNumber: parent?.lotNumber ?? '',
    promiseKept: meets ? (parent?.promise ?? '') : '',
  }
}
