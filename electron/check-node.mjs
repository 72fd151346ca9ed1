import module from 'node:module'
import { dirname, join } from 'node:path'
import { fileURLToPath } from 'node:url'

// Loaded before anything else by every npm script, in plain JavaScript that an old Node can still read: a Node that
// is too old would otherwise crash in the database library without a word.
const [major = 0, minor = 0] = process.versions.node.split('.').map(Number)

if (major < 22 || (major === 22 && minor < 18)) {
  console.error(
    `Common Drawer needs Node.js 22.18 or later; this is ${process.versions.node}. ` +
      'Nothing was started and nothing was changed. ' +
      'Run it through npm (npm start) after npm ci, or install Node.js 24 from your system or from nodejs.org.',
  )
  process.exit(1)
}

// Keeps what Node makes of the TypeScript for the next start; threads and child processes find it by the variable.
process.env.NODE_COMPILE_CACHE ??= join(
  dirname(fileURLToPath(import.meta.url)),
  '..',
  'node_modules',
  '.cache',
  'compiled',
)
module.enableCompileCache(process.env.NODE_COMPILE_CACHE)
