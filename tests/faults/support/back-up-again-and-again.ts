import { backUpInThread, backupUnderWay } from '../../../db/migrations/backup-thread.ts'

// Backs a collection up again and again until it is killed, and says when a copy has begun.
const [file = ''] = process.argv.slice(2)
for (let round = 0; ; round += 1) {
  const made = backUpInThread({
    file,
    label: 'kept',
    at: new Date(Date.UTC(2026, 2, 14) + round * 1_000).toISOString(),
    keeping: { secondFolder: '', limitBytes: 1e9 },
    onlyIfWritten: false,
  })
  const look = setInterval(() => {
    if ((backupUnderWay(file)?.copied ?? 0) > 0) process.stdout.write('copying\n')
  }, 1)
  await made
  clearInterval(look)
}
