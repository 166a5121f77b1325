import { expect, type Page } from '@playwright/test'
import { type ReadPage, readPdf } from '../documents/readPdf.ts'

/** Paper people have, in points: the app says which way it lies, the printer which it is. */
const kinds = ['A4', 'Letter'] as const

/** What a printer gets of the page, on each paper; fails where words would lie beyond its edges. */
export async function printed(page: Page): Promise<ReadPage[][]> {
  const papers: ReadPage[][] = []
  for (const format of kinds) {
    const { pages } = await readPdf(
      new Uint8Array(await page.pdf({ format, preferCSSPageSize: true, printBackground: false })),
    )
    for (const { width, reach } of pages) {
      expect(reach.right, `right edge on ${format}`).toBeLessThan(width)
      expect(reach.foot, `foot on ${format}`).toBeGreaterThan(0)
    }
    papers.push(pages)
  }
  return papers
}

/** All the words of some pages in one line, a space between any two. */
export function wordsOf(pages: readonly ReadPage[]): string {
  return pages
    .flatMap(page => page.lines)
    .join(' ')
    .replace(/\s+/g, ' ')
}
