import { useState } from 'react'
import type { Value } from '../../../db/contract/contract.ts'
import { useKeptForm } from '../../shared/card-form/use-kept-form.ts'
import { call } from '../../shared/client/call.ts'
import { ProblemError } from '../../shared/client/problem-error.ts'
import { useRead } from '../../shared/client/use-read.ts'

export interface Choice {
  readonly accessionId: number
  readonly siteId: number
  readonly covered: boolean
}

export type Made = Value<'plan.make'>

/** Accessions that are planned where the keeper ticked none: the most urgent. */
const MOST_URGENT = 40
const SOLVER_SECONDS = 8

interface Plan {
  readonly choices: readonly Choice[] | null
  readonly locked: readonly number[]
}

/** The plan on the table: made, moved by hand, checked after each move, kept while other screens are looked at. */
export function usePlan() {
  const latest = useRead('plan.latest', {})
  const needs = useRead('regrow.needs', { limit: MOST_URGENT })
  const lists = useRead('season-list.list', {})
  const thisSeason = lists.data?.lists.find(({ season }) => season === needs.data?.season.year)
  const list = useRead('season-list.get', thisSeason === undefined ? null : { listId: thisSeason.listId })
  const { typed, change } = useKeptForm<Plan>('season-plan', { choices: null, locked: [] })
  const saved = latest.data?.plan?.lines.map(({ accessionId, siteId, covered }) => ({
    accessionId,
    siteId,
    covered,
  }))
  const choices = typed.choices ?? saved ?? []
  const checked = useRead('plan.check', { choices: [...choices] }, { keepLast: true })
  const [making, setMaking] = useState<{ busy: boolean; made: Made | null; error: ProblemError | null }>({
    busy: false,
    made: null,
    error: null,
  })
  const ticked = list.data?.lines.filter(({ chosen }) => chosen).map(({ accessionId }) => accessionId)
  const urgent = needs.data?.needs
    .filter(
      ({ sow, state, growOut }) =>
        sow !== null && (state === 'rescue' || state === 'regrow') && growOut?.failed !== false,
    )
    .map(({ accessionId }) => accessionId)
  const wanted = ticked !== undefined && ticked.length > 0 ? ticked : (urgent ?? [])
  const make = async () => {
    setMaking({ ...making, busy: true, error: null })
    try {
      const locked = choices.filter(({ accessionId }) => typed.locked.includes(accessionId))
      const made = await call('plan.make', { accessionIds: [...wanted], locked, seconds: SOLVER_SECONDS })
      change({
        choices: made.lines.map(({ accessionId, siteId, covered }) => ({ accessionId, siteId, covered })),
      })
      setMaking({ busy: false, made, error: null })
    } catch (thrown) {
      if (!(thrown instanceof ProblemError)) throw thrown
      setMaking({ busy: false, made: null, error: thrown })
    }
  }
  const alter = (accessionId: number, part: Partial<Choice> | null) =>
    change({
      choices: choices.flatMap((choice) =>
        choice.accessionId !== accessionId ? [choice] : part === null ? [] : [{ ...choice, ...part }],
      ),
    })
  return {
    ready:
      latest.data !== undefined &&
      needs.data !== undefined &&
      lists.data !== undefined &&
      (thisSeason === undefined || list.data !== undefined),
    season: (typed.choices === null ? latest.data?.plan?.season : undefined) ?? needs.data?.season.year ?? 0,
    wanted,
    fromList: ticked !== undefined && ticked.length > 0,
    choices,
    locked: typed.locked,
    lock: (accessionId: number) =>
      change({
        locked: typed.locked.includes(accessionId)
          ? typed.locked.filter((id) => id !== accessionId)
          : [...typed.locked, accessionId],
      }),
    alter,
    checked,
    making,
    make,
    isSaved:
      saved !== undefined &&
      JSON.stringify(saved.map(keyOf).toSorted()) === JSON.stringify(choices.map(keyOf).toSorted()),
  }
}

export type PlanOnTable = ReturnType<typeof usePlan>

function keyOf({ accessionId, siteId, covered }: Choice): string {
  return `${accessionId} ${siteId} ${covered}`
}
