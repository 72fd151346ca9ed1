/** Keeps a text as it changes: one call on its way at most, the newest text always the last to be kept. */
export interface DraftSaver {
  keep(text: string): void
  /** Settles when everything handed over so far is kept or was refused. */
  settled(): Promise<void>
  /** The newest text that is not known to be kept; null where there is none. */
  unkept(): string | null
}

export function createDraftSaver(
  keep: (text: string) => Promise<unknown>,
  onOutcome: (outcome: 'kept' | 'not-kept') => void,
): DraftSaver {
  let waiting: string | null = null
  let unkept: string | null = null
  let running: Promise<void> | null = null
  const run = async () => {
    while (waiting !== null) {
      const text = waiting
      waiting = null
      try {
        await keep(text)
        if (unkept === text) unkept = null
        onOutcome('kept')
      } catch {
        // The text stays on the screen and goes with the next change; the screen says that it is not kept.
        onOutcome('not-kept')
      }
    }
    running = null
  }
  return {
    keep(text) {
      waiting = text
      unkept = text
      running ??= run()
    },
    settled: async () => {
      await running
    },
    unkept: () => unkept,
  }
}
