import Database from 'better-sqlite3'

// Another program that keeps the whole file to itself until it is ended.
const [file = ''] = process.argv.slice(2)
const sqlite = new Database(file)
sqlite.exec('BEGIN EXCLUSIVE')
process.stdout.write('held\n')
process.stdin.resume().once('end', () => sqlite.close())
