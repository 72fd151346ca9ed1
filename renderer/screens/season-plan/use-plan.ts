import { useMutation } from '@tanstack/react-query'
import { useEffect, useState } from 'react'
import type { Value } from '../../../db/contract/contract.ts'
import { call } from '../../shared/client/call.ts'
import { useRead } from '../../shared/client/use-read.ts'
import type { PlannedChoice } from '../../shared/season-draft/season-draft.ts'
import { useSeason } from '../../shared/season-draft/use-season.ts'

export type Made = Value<'season-plan.preview'>

/** Accessions that are planned where the keeper ticked none: the most urgent. */
const MOST_URGENT = 40
const SOLVER_SECONDS = 8

/** The plan on the table: made, moved by hand, checked after each move, kept until it is saved. */
export function usePlan() {
  const latest = useRead('season-plan.get', {})
  const needs = useRead('regeneration.list', { limit: MOST_URGENT })
  const lists = useRead('season-list.list', {})
  const thisSeason = lists.data?.lists.find(({ season }) => season === needs.data?.season.year)
  const list = useRead('season-list.get', thisSeason === undefined ? null : { listId: thisSeason.listId })
  const visit = useSeason()
  const { draft, dispatch } = visit
  const onTable = draft?.choices ?? null
  const locked = draft?.locked ?? []
  const saved = latest.data?.plan?.lines.map(choiceOf)
  const choices = onTable ?? saved ?? []
  const checked = useRead('season-plan.check', { choices: [...choices] }, { keepLast: true })
  const [made, setMade] = useState<Made | null>(null)
  const ticked = list.data?.lines.filter(({ chosen }) => chosen).map(({ accessionId }) => accessionId)
  const urgent = needs.data?.needs
    .filter(
      ({ sow, state, growOut }) =>
        sow !== null && (state === 'rescue' || state === 'regrow') && growOut?.failed !== false,
    )
    .map(({ accessionId }) => accessionId)
  const wanted = ticked !== undefined && ticked.length > 0 ? ticked : (urgent ?? [])
  const making = useMutation({
    mutationFn: () =>
      call('season-plan.preview', {
        accessionIds: [...wanted],
        locked: choices.filter(({ accessionId }) => locked.includes(accessionId)),
        seconds: SOLVER_SECONDS,
      }),
    onSuccess: (plan) => {
      dispatch({ kind: 'planned', choices: plan.lines.map(choiceOf) })
      setMade(plan)
    },
    onError: () => setMade(null),
  })
  const alter = (accessionId: number, part: Partial<PlannedChoice> | null) =>
    dispatch({ kind: 'altered', accessionId, part, saved: saved ?? [] })
  const sameAsSaved =
    saved !== undefined &&
    JSON.stringify(saved.map(keyOf).toSorted()) === JSON.stringify(choices.map(keyOf).toSorted())
  // A plan of last season that is made anew for this one has to be saved again.
  const isSaved = sameAsSaved && (onTable === null || latest.data?.plan?.season === needs.data?.season.year)
  useEffect(() => {
    if (isSaved && onTable !== null) dispatch({ kind: 'plan-saved' })
  })
  return {
    visit,
    ready:
      draft !== null &&
      latest.data !== undefined &&
      needs.data !== undefined &&
      lists.data !== undefined &&
      (thisSeason === undefined || list.data !== undefined),
    season: (onTable === null ? latest.data?.plan?.season : undefined) ?? needs.data?.season.year ?? 0,
    wanted,
    fromList: ticked !== undefined && ticked.length > 0,
    choices,
    locked,
    lock: (accessionId: number) => dispatch({ kind: 'locked', accessionId }),
    alter,
    checked,
    making,
    made,
    isSaved,
  }
}

export type PlanOnTable = ReturnType<typeof usePlan>

function choiceOf({ accessionId, siteId, way }: PlannedChoice): PlannedChoice {
  return { accessionId, siteId, way }
}

function keyOf({ accessionId, siteId, way }: PlannedChoice): string {
  return `${accessionId} ${siteId} ${way}`
}
