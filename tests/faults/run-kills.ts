import { killAndLook } from './support/kills.ts'

// npm run test:kills -- 500: many more kills than the tests have time for, from a new seed each time.
const [kills = '500', seed = String(Date.now() % 1_000_000)] = process.argv.slice(2)
console.log(`${kills} kills from seed ${seed}`)
const counts = await killAndLook(Number(kills), Number(seed))
for (const [what, count] of Object.entries(counts)) console.log(`  ${what}: ${count}`)
