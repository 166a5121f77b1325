import type { Page } from '@playwright/test'
import type { ReadPage } from '../documents/readPdf.ts'
import { readPdf } from '../documents/readPdf.ts'
import { expect, test } from './fixtures.ts'
import { Board } from './pages/Board.ts'
import { printed, wordsOf } from './paper.ts'
import { fillTwelveBays, twelveBaysNow } from './shops/twelveBays.ts'

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
  expect(sheet.length).toBeLessThanOrEqual(2)
  for (const plate of lines.filter(each => /^[A-Z]{3} \d{3}$/.test(each)))
    expect(wordsOf(sheet)).toContain(plate)
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
  test.use({ shopDemo: false, shopNow: twelveBaysNow })

  test('take two sheets for the morning and one for the picture of the week', async ({ desk, shop }) => {
    await fillTwelveBays(desk, shop, 36)
    await shop.enter(desk, '/morning')
    await expect(desk.getByRole('heading', { name: /^Bay 12/ })).toBeVisible()
    const names = await wordsIn(desk, 'main section h2')
    expect(names).toContain('Person 12')
    const cars = await wordsIn(desk, 'main section li a')
    for (const pages of await printed(desk)) {
      expect(pages.map(lies)).toEqual(['across', 'across'])
      const words = wordsOf(pages)
      for (const each of names) expect(words).toContain(each)
      for (const car of cars) expect(words).toContain(/BEN \d+/.exec(car)![0])
    }
    const sheet = await daySheetPages(desk)
    expect(sheet.length).toBeLessThanOrEqual(4)
    for (const car of cars) expect(wordsOf(sheet)).toContain(/BEN \d+/.exec(car)![0])

    await shop.enter(desk)
    const board = new Board(desk)
    await board.show('Week')
    await expect(board.stays.first()).toBeVisible()
    for (const pages of await printed(desk)) {
      // The picture has the first sheet; what runs late may need another.
      expect(pages.length).toBeLessThanOrEqual(2)
      expect(pages.map(lies)).not.toContain('upright')
      for (let bay = 1; bay <= 12; bay++) expect(wordsOf(pages.slice(0, 1))).toContain(`Bay ${bay}`)
    }
  })
})
