/** Milliseconds that the piece of work takes on the quiet machine of docs/performance.md. */
const QUIET_MS = 8
const EVERY_MS = 2_000
/** The first pieces are slow for another reason: their code is not compiled yet. */
const WARMING_UP = 5

/** A fixed piece of work of the kinds that tests do: numbers, texts, objects. Milliseconds. */
export function pieceOfWorkMs(): number {
  const begun = performance.now()
  let state = 1
  const rows = Array.from({ length: 6_000 }, () => {
    state = (state * 48_271) % 2_147_483_647
    return { id: state, name: `lot ${state.toString(36)}`, seeds: state % 1_000 }
  })
  const read = JSON.parse(JSON.stringify(rows)) as typeof rows
  read.sort((one, other) => one.name.localeCompare(other.name) || one.id - other.id)
  return performance.now() - begun
}

/**
 * Measures from now on how slow the machine is while the tests are run: a piece of work every two seconds.
 *
 * Answers what stops it and tells how many times slower than a quiet machine it was in its slowest tenth, 1 at
 * least.
 */
export function watchSlowness(work: () => number = pieceOfWorkMs): () => number {
  for (let piece = 0; piece < WARMING_UP; piece += 1) work()
  const took = [work()]
  const timer = setInterval(() => took.push(work()), EVERY_MS)
  return () => {
    clearInterval(timer)
    const inOrder = took.toSorted((one, other) => one - other)
    return Math.max(1, (inOrder[Math.floor(inOrder.length * 0.9)] as number) / QUIET_MS)
  }
}
