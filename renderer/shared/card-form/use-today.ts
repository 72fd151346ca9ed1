import { useRead } from '../client/use-read.ts'

/** Today as the collection counts it; empty until known. */
export function useToday(): string {
  return useRead('collection.get', {}).data?.today ?? ''
}
