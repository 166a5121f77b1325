import { describe, expect, it } from 'vitest'
import { type OrderSheet, orderPdf } from '../../main/documents/orderPdf.ts'
import { readPdf } from './readPdf.ts'

const sheet = (lines: number): OrderSheet => ({
  number: 17,
  dayWords: 'Wednesday 15 April 2026',
  at: 29_604_000,
  paper: 'LETTER',
  issuer: {
    name: 'Ashdown Paint Care',
    lines: ['12 Mill Lane', '+1 212-555-0100', 'hello@ashdown.example.com'],
    logo: null,
    colour: '#31456b',
  },
  supplier: { name: 'Carrow Supply', email: 'orders@carrow.example.com', phone: null, account: 'K-1180' },
  lines: Array.from({ length: lines }, (_, i) => ({
    article: `C-${100 + i}`,
    product: i === 0 ? 'Żółć → “Two”' : `Ovrel ${i}`,
    pack: '12 × 50 ml',
    packs: String(i + 1),
    packPrice: '48.00',
    amount: (48 * (i + 1)).toFixed(2),
  })),
  goods: '144.00',
  carriage: '9.00',
  total: '153.00',
  currency: 'USD',
  note: 'Please deliver before ten.',
  expectedWords: 'by Monday 20 April',
})

describe('a purchase order', () => {
  it('reads as it was written, whatever letters its names have', async () => {
    const { title, pages } = await readPdf(await orderPdf(sheet(2)))
    expect(title).toBe('Purchase order 17')
    expect(pages).toHaveLength(1)
    // US letter: 8.5 × 11 inches.
    expect([pages[0]!.width, pages[0]!.height]).toEqual([612, 792])
    const words = pages[0]!.lines.join('\n')
    expect(words).toMatch(/Wanted\s+by Monday 20 April/)
    expect(words).toMatch(/Our account\s+K-1180/)
    expect(words).toMatch(/C-100\s+Żółć → “Two”\s+12 × 50 ml\s+1\s+48\.00\s+48\.00/)
    expect(words).toMatch(/C-101\s+Ovrel 1\s+12 × 50 ml\s+2\s+48\.00\s+96\.00/)
    expect(words).toMatch(/Goods\s+144\.00/)
    expect(words).toMatch(/Carriage\s+9\.00/)
    expect(words).toMatch(/Total\s+153\.00/)
    expect(words).toContain('Please deliver before ten.')
  })

  it('goes on over pages with its head on each and no line lost or torn', async () => {
    const { pages } = await readPdf(await orderPdf(sheet(70)))
    expect(pages.length).toBeGreaterThan(1)
    for (const [i, page] of pages.entries()) {
      const words = page.lines.join('\n')
      expect(words).toMatch(/page \d of \d/)
      expect(words).toContain(`page ${i + 1} of ${pages.length}`)
      if (/C-1\d\d/.test(words)) expect(words).toMatch(/Article\s+Product/)
    }
    const all = pages.flatMap(page => page.lines).join('\n')
    for (let i = 0; i < 70; i++) expect(all.split(new RegExp(`C-${100 + i}\\b`))).toHaveLength(2)
  })

  it('prints on A4 where that is the paper, and gives the same bytes for the same order', async () => {
    const { pages } = await readPdf(await orderPdf({ ...sheet(1), paper: 'A4' }))
    // ISO 216: 210 × 297 mm.
    expect(pages[0]!.width).toBeCloseTo((210 / 25.4) * 72, 0)
    expect(Buffer.from(await orderPdf(sheet(3))).equals(Buffer.from(await orderPdf(sheet(3))))).toBe(true)
  })
})
