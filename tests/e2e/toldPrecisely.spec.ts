import type { Page } from '@playwright/test'
import { expect, test } from './fixtures.ts'
import { pageApi } from './pageApi.ts'
import { goOn } from './server.ts'

test.use({ shopDemo: true, shopNow: '2026-04-15T11:30:00Z' })

/** The minute's clock, the stream, and when something was saved last, which every save changes. */
const always = ['system.now', 'system.changes', 'backups.standing']

/** What a page asks of the app from now on, by procedure. */
function askedBy(page: Page): string[] {
  const asked: string[] = []
  page.on('request', request => {
    const { pathname } = new URL(request.url())
    if (!pathname.startsWith('/trpc/') || request.method() !== 'GET') return
    const paths = pathname.slice('/trpc/'.length).split(',')
    asked.push(...paths.filter(path => !always.includes(path)))
  })
  return asked
}

test('what one window saves, another asks again once, and nothing else', async ({ desk, shop, context }) => {
  const api = pageApi(desk)
  const board = await context.newPage()
  await board.goto(shop.address)
  await expect(board.getByRole('heading', { level: 1 })).toBeVisible()
  const suppliers = await context.newPage()
  await suppliers.goto(`${shop.address}/shelf/suppliers`)
  await expect(suppliers.getByRole('heading', { level: 1 })).toBeVisible()
  await goOn(desk, '/settings/shop')
  await board.waitForLoadState('networkidle')
  await suppliers.waitForLoadState('networkidle')
  const [onBoard, onSuppliers] = [askedBy(board), askedBy(suppliers)]

  // A supplier stands on no board.
  const [supplier] = await api.suppliers.list.query({})
  await api.suppliers.save.mutate({ ...supplier!, name: 'Harrow Supply' })
  await expect(suppliers.getByText('Harrow Supply').first()).toBeVisible()
  expect(onSuppliers.filter(path => path === 'suppliers.list')).toHaveLength(1)
  expect(onBoard).toEqual([])

  // A customer's name does, and no list of suppliers has one.
  onSuppliers.splice(0)
  const customer = await api.customers.get.query({ id: 'demo-customer-07' })
  await api.customers.save.mutate({ ...customer, name: 'Ines Harrow' })
  await expect.poll(() => onBoard.filter(path => path === 'board.range').length).toBe(1)
  await board.waitForLoadState('networkidle')
  expect(new Set(onBoard).size).toBe(onBoard.length)
  expect(onSuppliers).toEqual([])
})

test('the window that saves looks again once, not once more when it is told', async ({ desk }) => {
  await goOn(desk, '/shelf/suppliers')
  await desk.waitForLoadState('networkidle')
  const asked = askedBy(desk)
  await desk.getByRole('link', { name: 'Add a supplier' }).click()
  const form = desk.getByRole('form').last()
  await form.getByLabel('Name').fill('Quarry Goods')
  await form.getByRole('button', { name: 'Save' }).click()
  await expect(desk.getByText('Quarry Goods').first()).toBeVisible()
  await desk.waitForLoadState('networkidle')
  expect(asked.filter(path => path === 'suppliers.list')).toHaveLength(1)
})
