import { join } from 'node:path'
import type { Page } from '@playwright/test'
import { migrationsDir } from '../../main/hosts/build.ts'
import { openStore } from '../../main/store/store.ts'
import { bookStays } from '../bench/board/bookedStays.ts'
import type { ReadPage } from '../documents/readPdf.ts'
import { readPdf } from '../documents/readPdf.ts'
import { expect, test } from './fixtures.ts'
import { pageApi } from './pageApi.ts'
import { Board } from './pages/Board.ts'
import { printed, wordsOf } from './paper.ts'
import type { ShopServer } from './server.ts'

// Wednesday 15 April 2026, 09:40 on the shop's clock: four bays, eight cars that come, stand there or go.
test.use({ shopNow: '2026-04-15T13:40:00Z', shopDemo: true, colorScheme: 'dark' })

const pressed = /Find|Print|Re-lay|Book a car|Today|Sick or down|Correct|Look first|Send|Count|Numbers|choose/
/** Card, lines and closed hours of the dark scheme. */
const darkFills = /#1c2027|#14171c|#101317|#8fa6d6/

const lies = ({ width, height }: ReadPage) => (width > height ? 'across' : 'upright')

/** The words of some elements, each once. */
async function wordsIn(page: Page, selector: string): Promise<string[]> {
  const all = await page.locator(selector).allTextContents()
  return [...new Set(all.map(words => words.replace(/\s+/g, ' ').trim()).filter(Boolean))]
}

async function daySheetPages(page: Page): Promise<ReadPage[]> {
  const path = await page.getByRole('link', { name: 'Day sheet' }).getAttribute('href')
  const bytes = await page.evaluate(async at => {
    const body = await (await fetch(at)).arrayBuffer()
    return [...new Uint8Array(body)]
  }, path!)
  return (await readPdf(Uint8Array.from(bytes))).pages
}

test('the week of the board lies on one sheet, whole, light and without what is pressed', async ({
  desk,
  shop,
}) => {
  await shop.enter(desk)
  const board = new Board(desk)
  await board.show('Week')
  await expect(board.stays.first()).toBeVisible()
  const stays = await board.stays.count()
  for (const pages of await printed(desk)) {
    expect(pages.map(lies)).toEqual(['across'])
    const words = wordsOf(pages)
    for (const each of ['Bay 1', 'Bay 2', 'Bay 3', 'Bay 4', 'Wed 15 April', 'Tue 21 April', 'now 09:40'])
      expect(words).toContain(each)
    expect(words).toMatch(/HPF 326 promised .* now expected .* 10:30/)
    expect(words).not.toMatch(pressed)
    expect(pages.flatMap(page => page.fills).join(' ')).not.toMatch(darkFills)
    // Each place of a car says its plate, but where it is narrower than a line is high.
    const plates = words.match(/\b[A-Z]{3} \d{3}\b/g) ?? []
    expect(plates.length).toBeGreaterThan(stays * 0.9)
  }
  // The window is as it was.
  await expect(desk.locator('html')).toHaveAttribute('data-mantine-color-scheme', 'dark')
  await expect(desk.getByRole('button', { name: 'Re-lay' })).toBeVisible()
})

test('the morning of four bays goes on one sheet, with both pictures and every line of its lists', async ({
  desk,
  shop,
}) => {
  await shop.enter(desk, '/morning')
  await expect(desk.getByRole('heading', { name: /^Bay 4/ })).toBeVisible()
  const lines = await wordsIn(desk, 'main section li b, main section li a[class*=plate]')
  const names = await wordsIn(desk, 'main section h2')
  expect(names.length).toBeGreaterThan(8)
  for (const pages of await printed(desk)) {
    expect(pages.map(lies)).toEqual(['across'])
    const words = wordsOf(pages)
    for (const each of [...names, ...lines]) expect(words).toContain(each)
    expect(words).toMatch(/data sheet, local codes and licensed practice decide/)
    expect(words).not.toMatch(pressed)
    expect(pages.flatMap(page => page.fills).join(' ')).not.toMatch(darkFills)
  }
  const sheet = await daySheetPages(desk)
  expect(sheet).toHaveLength(1)
  for (const name of names) expect(wordsOf(sheet)).toContain(name.split(' ')[0])
})

test('the close of day is a list on one upright sheet', async ({ desk, shop }) => {
  await shop.enter(desk, '/close')
  await expect(desk.getByRole('heading', { name: /^Confirm usage/ })).toBeVisible()
  const used = await wordsIn(desk, 'main table tbody td:first-child a')
  const also = await wordsIn(desk, 'main section ul > li > b')
  const shelf = await wordsIn(desk, 'main [data-rank] a')
  expect([used.length, also.length, shelf.length].every(count => count > 0)).toBe(true)
  for (const pages of await printed(desk)) {
    expect(pages.map(lies)).toEqual(['upright'])
    const words = wordsOf(pages)
    for (const each of [...used, ...also, ...shelf, 'Carrow Supply']) expect(words).toContain(each)
    expect(words).not.toMatch(pressed)
    expect(pages.flatMap(page => page.fills).join(' ')).not.toMatch(darkFills)
  }
})

test.describe('twelve bays', () => {
  test.use({ shopDemo: false, shopNow: '2026-04-15T10:00:00Z' })

  /** Twelve bays, ten people, a car in most of them today and more through the weeks. */
  async function fillTwelve(desk: Page, shop: ShopServer): Promise<void> {
    await shop.enter(desk)
    await pageApi(desk).shop.setUp.mutate({
      name: 'Ashdown Paint Care',
      zone: 'UTC',
      currency: 'EUR',
      units: 'metric',
      country: 'IE',
      weekly: [1, 2, 3, 4, 5].map(weekday => ({ weekday, from: 480, to: 1_080 })),
      bays: Array.from({ length: 12 }, (_, i) => ({
        name: `Bay ${i + 1}`,
        capabilities: ['wet', 'polish', 'clean', 'cure'],
      })),
      crew: Array.from({ length: 10 }, (_, i) => ({
        name: `Person ${i + 1}`,
        skills: ['wash', 'polish', 'coat'],
      })),
      starters: false,
    })
    await shop.stop()
    const store = await openStore(join(shop.dataDir, 'lustrum.db'), { dir: migrationsDir })
    const nowAt = Date.UTC(2026, 3, 15, 10) / 60_000
    await bookStays({ store, now: () => nowAt, who: 'test' }, 36)
    await store.close()
    await shop.start()
  }

  test('take two sheets for the morning and one for the week', async ({ desk, shop }) => {
    await fillTwelve(desk, shop)
    await shop.enter(desk, '/morning')
    await expect(desk.getByRole('heading', { name: /^Bay 12/ })).toBeVisible()
    const names = await wordsIn(desk, 'main section h2')
    expect(names).toContain('Person 10')
    const cars = await wordsIn(desk, 'main section li a')
    for (const pages of await printed(desk)) {
      expect(pages.map(lies)).toEqual(['across', 'across'])
      const words = wordsOf(pages)
      for (const each of names) expect(words).toContain(each)
      for (const car of cars) expect(words).toContain(/BEN \d+/.exec(car)![0])
    }
    const sheet = await daySheetPages(desk)
    expect(sheet.length).toBeLessThanOrEqual(3)
    for (const car of cars) expect(wordsOf(sheet)).toContain(/BEN \d+/.exec(car)![0])

    await shop.enter(desk)
    const board = new Board(desk)
    await board.show('Week')
    await expect(board.stays.first()).toBeVisible()
    for (const pages of await printed(desk)) {
      expect(pages.map(lies)).toEqual(['across'])
      for (let bay = 1; bay <= 12; bay++) expect(wordsOf(pages)).toContain(`Bay ${bay}`)
    }
  })
})
