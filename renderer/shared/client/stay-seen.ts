import { noteConnection } from './connection.ts'
import { tellHost } from './secret.ts'

const AGAIN_AFTER_MS = 1_000

/** Holds a line open to the host on this machine, which ends when its last window has gone. */
export async function staySeen(): Promise<never> {
  addEventListener('pagehide', sayGoodbye)
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
  const response = await tellHost('/alive', false)
  const line = response.body?.getReader()
  while (line !== undefined && !(await line.read()).done);
}

/** A page that goes to sleep says nothing: by this the host tells the two apart. */
function sayGoodbye(): void {
  void tellHost('/goodbye', true).catch(() => {})
}
