import { useQuery, useQueryClient } from '@tanstack/react-query'
import { useEffect, useRef } from 'react'
import { call } from './call.ts'

/** How soon one window sees what another wrote, milliseconds. */
const LOOK_EVERY_MS = 700

/** Has every read done afresh when another window wrote to the collection. */
export function useOthersWrites(): void {
  const queries = useQueryClient()
  const seen = useRef<number | null>(null)
  const revision = useQuery({
    queryKey: ['collection.revision'],
    queryFn: () => call('collection.revision', {}),
    refetchInterval: LOOK_EVERY_MS,
    staleTime: 0,
  }).data?.revision
  useEffect(() => {
    if (revision === undefined || revision === seen.current) return
    const isFirst = seen.current === null
    seen.current = revision
    if (isFirst) return
    void queries.invalidateQueries({ predicate: ({ queryKey }) => queryKey[0] !== 'collection.revision' })
  }, [revision, queries])
}
