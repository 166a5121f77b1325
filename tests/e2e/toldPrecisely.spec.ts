import type { Page, Request } from '@playwright/test'
import { expect, test } from './fixtures.ts'
import { pageApi } from './pageApi.ts'
import { goOn } from './server.ts'

test.use({ shopDemo: true, shopNow: '2026-04-15T11:30:00Z' })

/** The minute's clock, the stream, and when something was saved last, which every save changes. */
const always = ['system.now', 'system.changes', 'backups.standing']

/** What a page asks of the app from now on, by procedure; and when it has had all its answers and asks no more. */
function askedBy(page: Page) {
  const asked: string[] = []
  const open = new Set<Request>()
  let lastAt = performance.now()
  page.on('request', request => {
    const { pathname } = new URL(request.url())
    if (!pathname.startsWith('/trpc/') || request.method() !== 'GET') return
    const paths = pathname.slice('/trpc/'.length).split(',')
    const told = paths.filter(path => !always.includes(path))
    if (told.length === 0) return
    asked.push(...told)
    open.add(request)
    lastAt = performance.now()
  })
  const ended = (request: Request) => {
    if (open.delete(request)) lastAt = performance.now()
  }
  page.on('requestfinished', ended)
  page.on('requestfailed', ended)
  // The load state of a page does not know of what it asks after it has loaded.
  const quiet = () => expect.poll(() => open.size === 0 && performance.now() - lastAt > 700).toBe(true)
  return { asked, quiet }
}

/** A screen opened, with all it asks for; from here on it is told what it asks again. */
async function opened(page: Page, go: () => Promise<unknown>, shows: string) {
  const watch = askedBy(page)
  await go()
  await expect(page.getByText(shows).first()).toBeVisible()
  await watch.quiet()
  watch.asked.splice(0)
  return watch
}

test('what one window saves, another asks again once, and nothing else', async ({ desk, shop, context }) => {
  const api = pageApi(desk)
  const [board, suppliers] = [await context.newPage(), await context.newPage()]
  const { asked: onBoard, quiet } = await opened(board, () => board.goto(shop.address), 'Bay 1')
  const [supplier] = await api.suppliers.list.query({})
  const { asked: onSuppliers } = await opened(
    suppliers,
    () => suppliers.goto(`${shop.address}/shelf/suppliers`),
    supplier!.name,
  )
  await goOn(desk, '/settings/shop')

  // A supplier stands on no board.
  await api.suppliers.save.mutate({ ...supplier!, name: 'Harrow Supply' })
  await expect(suppliers.getByText('Harrow Supply').first()).toBeVisible()
  expect(onSuppliers.filter(path => path === 'suppliers.list')).toHaveLength(1)
  expect(onBoard).toEqual([])

  // A customer's name does, and no list of suppliers has one.
  onSuppliers.splice(0)
  const customer = await api.customers.get.query({ id: 'demo-customer-07' })
  await api.customers.save.mutate({ ...customer, name: 'Ines Harrow' })
  await expect.poll(() => onBoard.filter(path => path === 'board.range').length).toBe(1)
  await quiet()
  expect(new Set(onBoard).size).toBe(onBoard.length)
  expect(onSuppliers).toEqual([])
})

test('the window that saves looks again once, not once more when it is told', async ({ desk }) => {
  const [supplier] = await pageApi(desk).suppliers.list.query({})
  const { asked, quiet } = await opened(desk, () => goOn(desk, '/shelf/suppliers'), supplier!.name)
  await desk.getByRole('link', { name: 'Add a supplier' }).click()
  const form = desk.getByRole('form').last()
  await form.getByLabel('Name').fill('Quarry Goods')
  await form.getByRole('button', { name: 'Save' }).click()
  await expect(desk.getByText('Quarry Goods').first()).toBeVisible()
  await quiet()
  expect(asked.filter(path => path === 'suppliers.list')).toHaveLength(1)
})
