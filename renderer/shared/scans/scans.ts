import { useEffect, useEffectEvent } from 'react'
import type { Value } from '../../../db/contract/contract.ts'
import type { Problem } from '../../../db/contract/problem.ts'
import { call } from '../client/call.ts'
import { ProblemError } from '../client/problem-error.ts'
import { lettersEnd, whenLettersRest } from './letters.ts'

type Taker = (lotId: number) => void
type Reader = (text: string) => void

const takers: Taker[] = []
const readers = new Set<Reader>()

/** CollectionBackend a scanned lot to the screen in view, the newest first. False where no screen wants it: then it opens the lot. */
export function offerScan(lotId: number): boolean {
  const taker = takers.at(-1)
  taker?.(lotId)
  return taker !== undefined
}

/** Tells whoever caught the letters of a label reader that no hand typed them. */
export function tellScanRead(text: string): void {
  lettersEnd()
  for (const reader of readers) reader(text)
}

/**
 * Lets a screen take scanned lots for itself, as the hand-out table does.
 *
 * Lots arrive one after the other, each on what the one before it left, however quickly they were scanned.
 */
export function useLotScan(
  onLot: (lot: Value<'lot.get'>) => void | Promise<void>,
  onRefused: (problem: Problem) => void,
): void {
  const take = useEffectEvent(onLot)
  const refuse = useEffectEvent(onRefused)
  useEffect(() => {
    let turn: Promise<void> = Promise.resolve()
    const taker: Taker = (lotId) => {
      const asked = call('lot.get', { lotId })
      turn = turn
        .then(() => asked)
        .finally(whenLettersRest)
        .then(take, (thrown) => {
          if (!(thrown instanceof ProblemError)) throw thrown
          refuse(thrown.problem)
        })
    }
    takers.push(taker)
    return () => {
      takers.splice(takers.indexOf(taker), 1)
    }
  }, [])
}

/** Listens for what a label reader typed, wherever its letters fell. */
export function useScanRead(onRead: Reader): void {
  const read = useEffectEvent(onRead)
  useEffect(() => {
    const reader: Reader = (text) => read(text)
    readers.add(reader)
    return () => {
      readers.delete(reader)
    }
  }, [])
}
