import { defineConfig, type TestProjectConfiguration } from 'vitest/config'
import { LONG_RUN, sized } from './tests/support/sized.ts'

/** A project of the unit tests: what it is called, its folders, and whether its files share what they load. */
function project(name: string, folders: readonly string[], shared: boolean): TestProjectConfiguration {
  return {
    extends: true,
    test: {
      name,
      include: folders.map((folder) => `tests/${folder}/**/*.test.ts`),
      exclude: ['tests/architecture/planted/**', '**/node_modules/**'],
      isolate: !shared,
    },
  }
}

export default defineConfig({
  test: {
    globalSetup: 'tests/support/before-unit-tests.ts',
    testTimeout: sized(30_000, 1_800_000),
    hookTimeout: 60_000,
    allowOnly: false,
    maxWorkers: 2,
    tags: [{ name: 'long', description: 'Tried in the long run only: npm run test:long' }],
    ...(LONG_RUN ? {} : { tagsFilter: ['!long'] }),
    projects: [
      project('rules', ['domain', 'published', 'renderer', 'messages', 'architecture'], true),
      project('files', ['services', 'paper', 'exchange', 'migrations', 'solver'], true),
      // These start, stop and break processes, and read what a process was started with.
      project('processes', ['electron', 'faults', 'support'], false),
    ],
  },
})
