import { defineConfig } from 'vitest/config'

export default defineConfig({
  test: {
    include: ['tests/**/*.test.ts', 'tests/**/*.test.tsx'],
    exclude: ['tests/app/**', 'tests/architecture/planted/**', '**/node_modules/**'],
    testTimeout: 30_000,
    hookTimeout: 60_000,
    allowOnly: false,
    maxWorkers: 2,
  },
})
