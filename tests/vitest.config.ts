import { availableParallelism } from 'node:os'
import { fileURLToPath } from 'node:url'
import { defineConfig } from 'vitest/config'

export default defineConfig({
  root: fileURLToPath(new URL('..', import.meta.url)),
  test: {
    include: ['tests/**/*.test.ts', 'tests/**/*.test.tsx'],
    exclude: ['tests/e2e/**', 'node_modules/**'],
    // By itself it leaves one core idle, which of two is half.
    maxWorkers: availableParallelism(),
    // Four hundred files that each load the database's client anew are a third of the run; none leaves anything behind.
    isolate: false,
    // A test that computes is no worse for being slow on a busy machine.
    testTimeout: 120_000,
    hookTimeout: 120_000,
    expect: { poll: { timeout: 60_000 } },
    globalSetup: ['tests/setup/emptyDatabase.ts'],
    setupFiles: ['tests/setup/seed.ts'],
  },
})
