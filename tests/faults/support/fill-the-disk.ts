import { rmSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { startHost } from '../../../electron/host/start-host.ts'

// Writes on a small disk until it is full, makes room, and asks again with the same key; says what came of it.
const [folder = ''] = process.argv.slice(2)
const ballast = join(folder, 'ballast')
const host = startHost({ folder, file: join(folder, 'none.drawer') })
const start = { key: 'first-key', libraryName: 'Small Disk' }
const started = await host.call('collection.create', start)
if (!started.ok) throw new Error(started.problem.sentence)
writeFileSync(ballast, Buffer.alloc(300_000))

const fill = (count: number) =>
  host.call('person.create', {
    key: `person-number-${count}`,
    name: `Person ${count}`,
    note: 'long '.repeat(4_000),
  })
let written = 0
let answer = await fill(written)
while (answer.ok) {
  written += 1
  answer = await fill(written)
}
const check = async () => host.call('collection.check', {})
const about = async () => host.call('collection.get', {})
const whenFull = [await check(), await about()]
rmSync(ballast)
const again = await fill(written)
const whenFree = [await check(), await about()]
console.log(JSON.stringify({ written, problem: answer.problem, whenFull, again: again.ok, whenFree }))
await host.close()
