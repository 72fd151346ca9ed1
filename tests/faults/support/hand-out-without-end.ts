import { startHost } from '../../../electron/host/start-host.ts'

// The host at work: takes a gift in, then hands out one seed after another, and says which key was answered.
const [folder = '', file = '', run = ''] = process.argv.slice(2)
const host = startHost({ folder, file })
const say = (line: string) => process.stdout.write(`${line}\n`)

const on = '2026-03-14'
const gift = { variety: { newVariety: { cropId: 'bean', name: 'Ferry Bean' } }, amount: '100000 seeds' }
const intake = { key: `gift-of-run-${run}`, donor: null, receivedOn: on, gifts: [gift] }
const taken = await host.call('intake.record', intake)
if (!taken.ok) throw new Error(taken.problem.sentence)
const { lotId } = (taken.value as { taken: { lotId: number }[] }).taken[0] ?? { lotId: 0 }

for (let count = 0; ; count += 1) {
  const key = `run-${run}-packet-${count}`
  say(`asked ${key} ${lotId}`)
  const answer = await host.call('withdrawal.record', {
    key,
    person: null,
    on,
    lines: [{ lotId, amount: '1 seeds' }],
  })
  if (!answer.ok) throw new Error(answer.problem.sentence)
  say(`answered ${key} ${lotId}`)
}
