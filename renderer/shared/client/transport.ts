import type { CallInput, OperationName } from '../../../db/contract/contract.ts'
import type { Answer } from '../../../db/contract/problem.ts'
import { NoAnswer } from './problem-error.ts'
import { tellHost } from './secret.ts'

interface Door {
  call(operation: string, input: unknown): Promise<Answer<unknown>>
}

declare global {
  interface Window {
    /** The one function that the desktop window exposes; missing in a browser. */
    readonly commonDrawer?: Door
  }
}

/** Sends a call through the window's door, or to the host on this machine. Throws NoAnswer. */
export async function send(operation: string, input: unknown): Promise<Answer<unknown>> {
  try {
    if (window.commonDrawer !== undefined) return await window.commonDrawer.call(operation, input)
    return await post(operation, input)
  } catch {
    throw new NoAnswer()
  }
}

/** Sends a last call as the page is left, when nobody will be there to hear the answer. */
export function sendOnLeaving<N extends OperationName>(operation: N, input: CallInput<N>): void {
  if (window.commonDrawer !== undefined) void window.commonDrawer.call(operation, input)
  else void post(operation, input, true)
}

async function post(operation: string, input: unknown, outlivesPage = false): Promise<Answer<unknown>> {
  const response = await tellHost('/call', outlivesPage, JSON.stringify({ operation, input }))
  return (await response.json()) as Answer<unknown>
}
