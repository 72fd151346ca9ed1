import { noteConnection } from './connection.ts'
import { keptSecret } from './secret.ts'

const AGAIN_AFTER_MS = 1_000

/** Holds a line open to the host on this machine, which ends when its last window has gone. */
export async function staySeen(): Promise<never> {
  for (;;) {
    try {
      await holdLine()
    } catch {
      noteConnection('away')
    }
    await new Promise((resolve) => setTimeout(resolve, AGAIN_AFTER_MS))
  }
}

async function holdLine(): Promise<void> {
  const response = await fetch('/alive', {
    method: 'POST',
    headers: { 'Content-Type': 'application/json', 'X-Drawer-Secret': keptSecret() },
  })
  const line = response.body?.getReader()
  while (line !== undefined && !(await line.read()).done);
}
