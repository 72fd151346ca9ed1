import { startApp } from './start-app.ts'

process.exitCode = await startApp(process.argv.slice(2))
