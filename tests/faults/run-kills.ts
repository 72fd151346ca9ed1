import { killAndLook } from './support/kills.ts'

// npm run test:kills -- 500: many more kills than the tests have time for, from a new seed each time, told as they go.
const CHUNK = 25

const [kills = '500', seed = String(Date.now() % 1_000_000)] = process.argv.slice(2)
console.log(`${kills} kills from seed ${seed}`)
const sums = new Map<string, number>()
for (let done = 0; done < Number(kills); done += CHUNK) {
  const counts = await killAndLook(Math.min(CHUNK, Number(kills) - done), Number(seed) + done)
  for (const [what, count] of Object.entries(counts)) sums.set(what, (sums.get(what) ?? 0) + count)
  console.log([...sums].map(([what, count]) => `${what}: ${count}`).join(', '))
}
