/** Two ways of one piece of work, timed turn about in one run. */
export interface Comparison {
  readonly name: string
  readonly oursMs: number
  readonly bareMs: number
  readonly ratio: number
}

/** Runs both ways `rounds` times, turn about so that neither has the warmer disk, and compares their medians. */
export async function compare(
  name: string,
  rounds: number,
  ours: () => unknown,
  bare: () => unknown,
): Promise<Comparison> {
  await ours()
  await bare()
  const times: { ours: number[]; bare: number[] } = { ours: [], bare: [] }
  for (let round = 0; round < rounds; round += 1) {
    times.ours.push(await timed(ours))
    times.bare.push(await timed(bare))
  }
  const [oursMs, bareMs] = [median(times.ours), median(times.bare)]
  return { name, oursMs, bareMs, ratio: oursMs / bareMs }
}

async function timed(work: () => unknown): Promise<number> {
  const start = performance.now()
  await work()
  return performance.now() - start
}

function median(values: readonly number[]): number {
  const sorted = values.toSorted((a, b) => a - b)
  return sorted[Math.floor(sorted.length / 2)] ?? Number.NaN
}
