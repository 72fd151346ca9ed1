import { defineConfig } from 'vite'

// A sandboxed preload must be one CommonJS file.
export default defineConfig({
  publicDir: false,
  build: {
    ssr: true,
    outDir: 'dist/app/electron/preload',
    emptyOutDir: false,
    minify: false,
    rolldownOptions: {
      input: 'electron/preload/preload.ts',
      external: ['electron'],
      output: { format: 'cjs', entryFileNames: 'preload.cjs' },
    },
  },
})
