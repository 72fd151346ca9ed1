import { useEffect, useEffectEvent } from 'react'

/** What a label reader typed, and the lot it names where it names one. */
export interface Scan {
  readonly text: string
  readonly lotId: number | null
  readonly lotNumber: string | null
}

type Taker = (scan: Scan) => boolean

const takers: Taker[] = []

/** Offers a scan to the screen in view, the newest taker first. False where nobody wants it: then it opens the lot. */
export function offerScan(scan: Scan): boolean {
  return takers.toReversed().some((take) => take(scan))
}

/** Lets a screen take scanned labels for itself, as the hand-out table does. Answer true when the scan was used. */
export function useScan(take: Taker): void {
  const takeNow = useEffectEvent(take)
  useEffect(() => {
    const taker: Taker = (scan) => takeNow(scan)
    takers.push(taker)
    return () => {
      takers.splice(takers.indexOf(taker), 1)
    }
  }, [])
}
