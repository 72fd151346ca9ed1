import { useState } from 'react'
import type { Value } from '../../../db/contract/contract.ts'
import type { LabelSheet } from '../../../db/contract/paper-operations.ts'
import { useRead } from '../../shared/client/use-read.ts'

const KEPT_AS = 'label-sheet'

/** Where the sheet in the printer goes on: as it was left after the last printing, unless the keeper says otherwise. */
export function useSheet(known: Value<'tray.list'>['sheets']) {
  const sheets = useRead('label.sheets', {}).data?.sheets ?? []
  const paper = useRead('collection.about', {}).data?.settings.paper ?? 'a4'
  const [picked, setPicked] = useState(() => localStorage.getItem(KEPT_AS))
  const [typed, setTyped] = useState<{ startAt?: number; right?: string; down?: string }>({})
  const wanted = picked ?? known[0]?.sheet
  const sheet =
    sheets.find((each) => each.sheet === wanted) ?? sheets.find((each) => each.sheet.startsWith(paper))
  const left = known.find((each) => each.sheet === sheet?.sheet)
  const startAt = typed.startAt ?? left?.startAt ?? 1
  const right = typed.right ?? String(left?.offsetMm[0] ?? 0)
  const down = typed.down ?? String(left?.offsetMm[1] ?? 0)
  return {
    sheets,
    sheet,
    startAt,
    right,
    down,
    offsetMm: [millimetres(right), millimetres(down)] as const,
    pick(next: LabelSheet) {
      localStorage.setItem(KEPT_AS, next)
      setPicked(next)
      setTyped({})
    },
    type: (change: typeof typed) => setTyped((was) => ({ ...was, ...change })),
    /** Goes on where the printing that was just noted left off. */
    goOn: () => setTyped({}),
  }
}

export type SheetInUse = ReturnType<typeof useSheet>

/** A shift in millimetres with comma or point, or null where it is none from -10 to 10. */
export function millimetres(typed: string): number | null {
  const text = typed.trim().replace(',', '.').replace('−', '-')
  const value = Number(text === '' ? '0' : text)
  return Number.isFinite(value) && Math.abs(value) <= 10 ? value : null
}
