import { useState } from 'react'
import type { ExtraColumn } from './shelf-columns.tsx'

const KEPT_AS = 'shelf-columns'

export type ShownColumns = Readonly<Record<ExtraColumn, boolean>>

/** Which of the extra columns are shown, remembered on this machine. */
export function useExtraColumns(): [ShownColumns, (column: ExtraColumn, shown: boolean) => void] {
  const [columns, setColumns] = useState<ShownColumns>(() => {
    const kept = (localStorage.getItem(KEPT_AS) ?? '').split(' ')
    return { place: kept.includes('place'), donor: kept.includes('donor') }
  })
  const show = (column: ExtraColumn, shown: boolean) => {
    const next = { ...columns, [column]: shown }
    localStorage.setItem(
      KEPT_AS,
      Object.entries(next)
        .filter(([, on]) => on)
        .map(([name]) => name)
        .join(' '),
    )
    setColumns(next)
  }
  return [columns, show]
}
