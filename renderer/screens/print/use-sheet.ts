import { useState } from 'react'
import type { Value } from '../../../db/contract/contract.ts'
import type { LabelSays, LabelSheet } from '../../../db/contract/print-operations.ts'
import { useRead } from '../../shared/client/use-read.ts'

const KEPT_AS = 'label-sheet'
const PRINTER_KEPT_AS = 'printer'

interface Typed {
  readonly startAt?: number
  readonly right?: string
  readonly down?: string
}

/** Where the sheet in the printer goes on: as it was left after the last printing, unless the keeper says otherwise. */
export function useSheet(known: Pick<Value<'tray.list'>, 'sheets' | 'printers'>) {
  const sheets = useRead('label-sheet.list', {}).data?.sheets ?? []
  const paper = useRead('collection.get', {}).data?.settings.paper ?? 'a4'
  const [picked, setPicked] = useState(() => localStorage.getItem(KEPT_AS))
  const [printer, setPrinter] = useState(() => localStorage.getItem(PRINTER_KEPT_AS) ?? '')
  const [typed, setTyped] = useState<Typed>({})
  const [says, setSays] = useState<LabelSays>('what-fits')
  const [cropMarks, setCropMarks] = useState(false)
  const wanted = picked ?? known.sheets[0]?.sheet
  const sheet =
    sheets.find((each) => each.sheet === wanted) ?? sheets.find((each) => each.sheet.startsWith(paper))
  const moved = known.printers.find(({ name }) => name === printer.trim())?.offsetMm
  const startAt = typed.startAt ?? known.sheets.find((each) => each.sheet === sheet?.sheet)?.startAt ?? 1
  const right = typed.right ?? String(moved?.[0] ?? 0)
  const down = typed.down ?? String(moved?.[1] ?? 0)
  return {
    sheets,
    sheet,
    startAt,
    right,
    down,
    printer,
    says,
    cropMarks,
    offsetMm: [millimetres(right), millimetres(down)] as const,
    pick(next: LabelSheet) {
      localStorage.setItem(KEPT_AS, next)
      setPicked(next)
      setTyped(({ startAt: _, ...rest }) => rest)
    },
    /** Another printer moves its print by another measure. */
    usePrinter(name: string) {
      localStorage.setItem(PRINTER_KEPT_AS, name)
      setPrinter(name)
      setTyped(({ startAt: at }) => (at === undefined ? {} : { startAt: at }))
    },
    say: setSays,
    mark: setCropMarks,
    type: (change: Typed) => setTyped((was) => ({ ...was, ...change })),
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
