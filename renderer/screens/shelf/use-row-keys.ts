import { type KeyboardEvent, useEffect, useEffectEvent, useRef } from 'react'
import { useHeldKeys } from '../../shared/table-form/use-held-keys.ts'
import { useWhen } from '../../shared/table-form/use-when.ts'
import type { ShelfRows } from './use-shelf-rows.ts'

interface RowKeys {
  readonly rows: ShelfRows
  readonly chosen: number | null
  readonly onChoose: (lotId: number, how: 'arrow' | 'click') => void
  readonly onEnter: () => void
  readonly onTick: (lotId: number) => void
  readonly onTickFound: () => void
  readonly scrollTo: (index: number) => void
}

const A_PAGE = 10

/**
 * Arrows, Page, Home and End move the choice through the whole shelf, loaded or not; Enter goes to the record, Space
 * ticks the row, Ctrl+A all of them.
 */
export function useRowKeys({ rows, chosen, onChoose, onEnter, onTick, onTickFound, scrollTo }: RowKeys) {
  // The row that was asked for and is still on its way.
  const wanted = useRef<number | null>(null)
  const whenChosen = useRef<(() => void)[]>([])
  const current = useRef(0)
  const held = useHeldKeys()
  const whenFresh = useWhen(rows.total !== null && !rows.stale)
  for (const [index, row] of rows.at) if (row.lotId === chosen) current.current = index

  const chooseWanted = useEffectEvent(() => {
    const index = wanted.current
    const row = index === null ? undefined : rows.at.get(index)
    if (index === null || row === undefined) return
    wanted.current = null
    onChoose(row.lotId, 'arrow')
    // Its neighbours have their true heights only now.
    scrollTo(index)
  })
  useEffect(() => {
    if (wanted.current === null) for (const goOn of whenChosen.current.splice(0)) goOn()
  })
  useEffect(() => {
    if (rows.at.size > 0) chooseWanted()
  }, [rows.at])

  const moveTo = (index: number) => {
    const last = (rows.total ?? 0) - 1
    if (last < 0) return
    const to = Math.min(last, Math.max(0, index))
    scrollTo(to)
    const row = rows.at.get(to)
    wanted.current = row === undefined ? to : null
    if (row !== undefined) onChoose(row.lotId, 'arrow')
  }

  return (event: KeyboardEvent) => {
    if (event.target !== event.currentTarget || held.catches(event)) return
    const deed = deedOf(event)
    const target = TARGETS[event.key]
    // Rows that answer an earlier question are not gone through, and a row on its way is not mistaken for the last one.
    if ((deed !== null || target !== undefined) && (rows.stale || rows.total === null))
      return void held.holdKey(event, whenFresh)
    if (deed !== null && wanted.current !== null) {
      const chosenNow = new Promise<void>((resolve) => whenChosen.current.push(resolve))
      return void held.holdKey(event, () => chosenNow)
    }
    if (deed === 'tick-found' || (deed !== null && chosen !== null)) {
      event.preventDefault()
      if (deed === 'tick-found') onTickFound()
      else if (deed === 'tick' && chosen !== null) onTick(chosen)
      else onEnter()
      return
    }
    if (target === undefined) return
    event.preventDefault()
    moveTo(target(wanted.current ?? (chosen === null ? -1 : current.current), rows.total ?? 0))
  }
}

function deedOf(event: KeyboardEvent): 'enter' | 'tick' | 'tick-found' | null {
  if (event.key === 'a' && (event.ctrlKey || event.metaKey)) return 'tick-found'
  if (event.key === ' ') return 'tick'
  return event.key === 'Enter' ? 'enter' : null
}

/** Where each key leads to from a row, of so many. */
const TARGETS: Readonly<Record<string, (from: number, total: number) => number>> = {
  ArrowDown: (from) => from + 1,
  ArrowUp: (from) => from - 1,
  PageDown: (from) => from + A_PAGE,
  PageUp: (from) => from - A_PAGE,
  Home: () => 0,
  End: (_, total) => total - 1,
}
