import { fileURLToPath } from 'node:url'
import { defineConfig } from '@playwright/test'
import { chromiumArgs, findChromium } from './chromium.ts'
import type { ShopOptions } from './fixtures.ts'

const root = fileURLToPath(new URL('../..', import.meta.url))

export default defineConfig<ShopOptions>({
  testDir: '.',
  testMatch: '*.spec.ts',
  outputDir: `${root}test-results`,
  globalSetup: './build.ts',
  workers: 2,
  // A check of a submission takes a second look before it refuses; tests/parts.ts says aloud what needed one.
  retries: process.env.CI ? 1 : 0,
  forbidOnly: Boolean(process.env.CI),
  // A machine busy with other things is slow, not wrong; only a test that fails waits so long.
  timeout: 240_000,
  expect: { timeout: 30_000 },
  reporter: [['list'], ['json', { outputFile: `${root}.build/e2e.json` }]],
  use: {
    launchOptions: { executablePath: findChromium() ?? 'chromium', args: chromiumArgs },
    viewport: { width: 1366, height: 768 },
    screenshot: 'only-on-failure',
    // Far from any shop of the tests: a screen that counts in the browser's zone instead of the shop's shows it.
    timezoneId: 'Pacific/Auckland',
    locale: 'en-GB',
    // A test looks at a screen as it is, not at how it comes there.
    contextOptions: { reducedMotion: 'reduce' },
  },
})
