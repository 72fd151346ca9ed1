import { QueryClient } from '@tanstack/react-query'
import { NoAnswer, type ProblemError } from './problem-error.ts'

declare module '@tanstack/react-query' {
  interface Register {
    defaultError: ProblemError
  }
}

/** One cache per window. The data is on this machine: no network is needed, and only silence is tried again. */
export function createQueryClient(): QueryClient {
  const whenSilent = (failures: number, thrown: Error) => thrown instanceof NoAnswer && failures < 2
  return new QueryClient({
    defaultOptions: {
      queries: { networkMode: 'always', retry: whenSilent, retryDelay: 400, staleTime: 2_000 },
      mutations: { networkMode: 'always', retry: whenSilent, retryDelay: 400 },
    },
  })
}
