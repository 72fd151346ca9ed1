import Database from 'better-sqlite3'

// Dies in the middle of a transaction, when part of it is in the file already: as a power cut would leave it.
const [file = ''] = process.argv.slice(2)
const sqlite = new Database(file)
sqlite.pragma('cache_size = 1')
sqlite.exec('BEGIN IMMEDIATE')
sqlite.exec("UPDATE crop SET common_name = common_name || ' half written, half written, half written'")
process.kill(process.pid, 'SIGKILL')
