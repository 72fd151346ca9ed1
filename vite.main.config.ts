import { cpSync } from 'node:fs'
import { join } from 'node:path'
import { defineConfig, type Plugin } from 'vite'

/** Files that are read beside the code at run time: they lie in the built tree where they lie in the sources. */
function besideTheCode(...folders: readonly string[]): Plugin {
  let into = ''
  return {
    name: 'beside-the-code',
    configResolved(config) {
      into = config.build.outDir
    },
    closeBundle() {
      for (const folder of folders) {
        cpSync(folder, join(into, folder), { recursive: true, filter: (file) => !file.endsWith('.ts') })
      }
    },
  }
}

// Electron's main process and the collection's thread: one file for each source, in the same tree, so that what is
// found beside the code in the sources is found beside it here.
export default defineConfig({
  publicDir: false,
  plugins: [besideTheCode('db/migrations', 'db/reference', 'demo-data')],
  build: {
    ssr: true,
    outDir: 'dist/app',
    emptyOutDir: false,
    target: 'node24',
    minify: false,
    rolldownOptions: {
      input: [
        'electron/main/main.ts',
        'electron/host/collection-worker.ts',
        'db/migrations/backup-worker.ts',
        'db/solver/solve-worker.ts',
      ],
      external: ['electron'],
      output: {
        format: 'es',
        preserveModules: true,
        preserveModulesRoot: '.',
        entryFileNames: '[name].mjs',
      },
    },
  },
})
