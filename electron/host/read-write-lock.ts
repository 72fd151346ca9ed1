/**
 * Lets reads run side by side and everything else alone.
 *
 * Whoever comes later waits for those who came before, so a write never finds the collection swapped under it.
 */
export class ReadWriteLock {
  #shared: Promise<unknown>[] = []
  #alone: Promise<unknown> = Promise.resolve()

  /** Runs beside other shared work, after all work that asked earlier to be alone. */
  shared<T>(work: () => Promise<T>): Promise<T> {
    const run = this.#alone.then(work)
    const ended = run.then(nothing, nothing)
    this.#shared.push(ended)
    ended.then(() => {
      this.#shared = this.#shared.filter((other) => other !== ended)
    })
    return run
  }

  /** Runs after all work that came before, and before all that comes later. */
  alone<T>(work: () => Promise<T>): Promise<T> {
    const run = Promise.all([this.#alone, ...this.#shared]).then(work)
    this.#alone = run.then(nothing, nothing)
    return run
  }
}

function nothing(): void {}
