import { fileURLToPath } from 'node:url'

/** Where `npm run test:clocks` has put the present, as 2028-02-29T11:00:00Z; elsewhere undefined. */
export const testNow = process.env.LUSTRUM_TEST_NOW

/** What makes a process take that instant for the present (tests/setup/shiftedClock.mjs); nothing elsewhere. */
export function clockEnv(now = testNow): Record<string, string> {
  const preload = fileURLToPath(new URL('shiftedClock.mjs', import.meta.url))
  return now ? { NODE_OPTIONS: `--import=${preload}` } : {}
}
