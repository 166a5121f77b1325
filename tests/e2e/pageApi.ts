import type { Page } from '@playwright/test'
import { createTRPCClient, httpLink } from '@trpc/client'
import type { AppRouter } from '../../main/api/router.ts'

/** The typed api as a page that was let in may call it: for what a test needs to be there before it looks. */
export function pageApi(page: Page) {
  return createTRPCClient<AppRouter>({
    links: [
      httpLink({
        url: '/trpc',
        fetch: async (url, init) => {
          const call = { url: String(url), method: init?.method ?? 'GET', body: String(init?.body ?? '{}') }
          const { status, text } = await page.evaluate(async ({ url, method, body }) => {
            const { token } = JSON.parse(localStorage.getItem('lustrum-door') ?? '{}')
            const answer = await fetch(url, {
              method,
              headers: { 'content-type': 'application/json', 'x-lustrum-door': token },
              ...(method === 'POST' ? { body } : {}),
            })
            return { status: answer.status, text: await answer.text() }
          }, call)
          return new Response(text, { status, headers: { 'content-type': 'application/json' } })
        },
      }),
    ],
  })
}

export type PageApi = ReturnType<typeof pageApi>
