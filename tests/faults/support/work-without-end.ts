import { startHost } from '../../../electron/host/start-host.ts'
import { seeded } from '../../bench/random.ts'
import { type KnownRows, nextWork } from './random-work.ts'

// The host at work without end: says each write before it asks for it, and each answer once it has it. What was said has
// left the process before the work goes on, so that a kill takes back no word of it however slowly somebody listens.
const [folder = '', file = '', run = ''] = process.argv.slice(2)
const host = startHost({ folder, file })
const random = seeded(Number(run))
const say = (word: string, value: unknown) =>
  new Promise<void>((resolve) => {
    process.stdout.write(`${word} ${JSON.stringify(value)}\n`, () => resolve())
  })

const listed = await host.call('lot.list', { emptyToo: true, limit: 500 })
const written = await host.call('entry.list', { limit: 50 })
if (!listed.ok || !written.ok) throw new Error('The collection could not be read')
const known: KnownRows = {
  lotIds: (listed.value as { rows: { lotId: number }[] }).rows.map(({ lotId }) => lotId),
  entryIds: (written.value as { entries: { entryId: number }[] }).entries.map(({ entryId }) => entryId),
}

for (let count = 0; ; count += 1) {
  const asked = nextWork(random, `run-${run}-work-${count}`, known)
  await say('asked', asked)
  const answer = await host.call(asked.name, asked.input)
  await say('answered', { key: asked.key, answer })
  if (!answer.ok) continue
  const { entryId, taken = [] } = answer.value as { entryId: number; taken?: { lotId: number }[] }
  known.entryIds.push(entryId)
  known.lotIds.push(...taken.map(({ lotId }) => lotId))
}
