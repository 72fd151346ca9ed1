import { useMutation } from '@tanstack/react-query'
import type { ProblemError } from '../../shared/client/problem-error.ts'

/** Makes something when the keeper asks for it, and keeps what was made in sight. */
export function useMaking<T>(make: () => Promise<T>, then?: (made: T) => void) {
  return useMutation<T, ProblemError, void>({
    mutationFn: make,
    ...(then === undefined ? {} : { onSuccess: then }),
  })
}
