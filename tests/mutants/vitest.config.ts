import { defineConfig } from 'vitest/config'

// The tests that hold the rules of the trade to account, as quick as they can be: every planted fault runs those that
// reach it. The simulated lots take seconds and hold what the quicker tests hold.
export default defineConfig({
  test: {
    include: ['tests/domain/**/*.test.ts', 'tests/published/**/*.test.ts'],
    exclude: ['tests/published/qr-and-pdf.test.ts', 'tests/domain/viability/coverage.test.ts'],
    setupFiles: ['tests/mutants/fewer-examples.ts'],
    testTimeout: 60_000,
  },
})
