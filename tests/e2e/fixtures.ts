/*
 * What an end-to-end test stands on. A spec file is tests/e2e/<words>.spec.ts and begins:
 *
 *   import { expect, expectAccessible, test } from './fixtures.ts'
 *   test.use({ shopNow: '2026-04-15T07:40:00Z', shopDemo: true })
 *
 *   test('...', async ({ desk, shop }) => {
 *     await desk.getByRole('link', { name: 'Book' }).click()
 *     await shop.kill()                      // kill -9
 *     await shop.restart()                   // same data, new entrance
 *     await shop.enter(desk, '/book')        // let in again, at that screen
 *     await expectAccessible(desk)
 *   })
 *
 * - `shop`: the server (server.ts), started by the real command on a data folder of its own. The tests of one file
 *   with the same options share it in their order; another file, or other options, get a fresh one. A test that
 *   failed ends it, so the next starts clean.
 * - `desk`: a page that has been let in, at '/'. `page` is the same page not yet let in.
 * - `shopNow`, `shopDemo`, `shopYears`, `shopEnv`: options for `test.use`; without them a Wednesday in April and an empty database.
 * - The browser's clock starts at `shopNow` too. `npm run test:clocks` puts it, and the server's machine, elsewhere.
 * - Every test fails on an uncaught error or a console error in the page (a refused style or script counts);
 *   `test.use({ allowedErrors: [/words/] })` for a test that provokes one. A refused request's own line is not one.
 * - What is done on a screen goes into a page object, tests/e2e/pages/<Screen>.ts: a class that takes the Page and
 *   holds the screen's controls by role and name, so that a relabelled button is changed in one place.
 * - One file: npm run test:e2e -- words. Run `npm run test:e2e -- --headed words` to watch it.
 */
import { test as base, expect, type Page } from '@playwright/test'
import { testNow } from '../setup/clock.ts'
import { type ServerOptions, ShopServer } from './server.ts'

export { expectAccessible } from './accessible.ts'
export { expect }

export interface ShopOptions {
  shopNow: string
  shopDemo: boolean
  shopYears: number | undefined
  shopEnv: Record<string, string> | undefined
  allowedErrors: RegExp[]
}

interface Servers {
  /** The server for this file with these options; ends any other. */
  serve(file: string, options: ServerOptions): Promise<ShopServer>
  end(): Promise<void>
}

interface ShopFixtures {
  shop: ShopServer
  desk: Page
  noPageErrors: undefined
}

export const test = base.extend<ShopOptions & ShopFixtures, { servers: Servers }>({
  shopNow: ['2026-04-15T13:40:00Z', { option: true }],
  shopDemo: [false, { option: true }],
  shopYears: [undefined, { option: true }],
  shopEnv: [undefined, { option: true }],
  allowedErrors: [[], { option: true }],

  servers: [
    // biome-ignore lint/correctness/noEmptyPattern: Playwright reads a fixture's needs off this pattern.
    async ({}, use) => {
      let current: { key: string; server: ShopServer } | null = null
      const servers: Servers = {
        async serve(file, options) {
          const key = JSON.stringify([file, options])
          if (current?.key === key) return current.server
          await servers.end()
          current = { key, server: new ShopServer(options) }
          await current.server.start()
          return current.server
        },
        async end() {
          await current?.server.remove()
          current = null
        },
      }
      await use(servers)
      await servers.end()
    },
    { scope: 'worker' },
  ],

  shop: async ({ servers, shopNow, shopDemo, shopYears, shopEnv }, use, testInfo) => {
    const shop = await servers.serve(testInfo.file, {
      now: shopNow,
      demo: shopDemo,
      years: shopYears,
      env: shopEnv,
    })
    await use(shop)
    if (testInfo.status !== testInfo.expectedStatus) {
      await testInfo.attach('server', { body: shop.output, contentType: 'text/plain' })
      await servers.end()
    }
  },

  desk: async ({ page, shop }, use) => {
    await shop.enter(page)
    await use(page)
  },

  context: async ({ context, shopNow }, use) => {
    await context.clock.install({ time: testNow ?? shopNow })
    await use(context)
  },

  noPageErrors: [
    async ({ context, allowedErrors }, use) => {
      const errors: string[] = []
      context.on('weberror', event => errors.push(String(event.error())))
      context.on('console', message => {
        if (message.type() === 'error') errors.push(message.text())
      })
      await use(undefined)
      const unexpected = errors.filter(
        text =>
          !text.startsWith('Failed to load resource') && !allowedErrors.some(allowed => allowed.test(text)),
      )
      expect(unexpected, 'errors in the page').toEqual([])
    },
    { auto: true },
  ],
})
