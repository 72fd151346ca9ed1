import react from '@vitejs/plugin-react'
import { defineConfig } from 'vite'

// The pages, for both transports: relative addresses, nothing inlined that the content security policy would refuse.
export default defineConfig({
  root: 'renderer',
  base: './',
  plugins: [react()],
  build: {
    outDir: '../dist/renderer',
    emptyOutDir: true,
    assetsInlineLimit: 0,
    modulePreload: { polyfill: false },
    chunkSizeWarningLimit: 2_000,
  },
})
