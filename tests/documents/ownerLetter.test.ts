// DIN 5008:2020 form B: the address field lies 45 mm from the top, 20 mm from the left, 85 × 45 mm, its words 25 mm from
// the left as those of the letter; folds at 105 and 210 mm (from memory). A window of letter paper's No. 10 envelope:
// common practice, no source.
import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs'
import { describe, expect, it } from 'vitest'
import { type OwnerLetter, ownerLetterPdf } from '../../main/documents/ownerLetter.ts'

const mm = 72 / 25.4

const letter: OwnerLetter = {
  at: 29_604_360,
  paper: 'A4',
  language: 'de',
  issuer: {
    name: 'Ashdown Paint Care',
    lines: ['4 Quarry Lane', 'Ashdown', '030 23125 001', 'hello@example.com'],
    logo: null,
    colour: '#31456b',
  },
  to: ['Łucja Birk-Ødegård', '12 Larch Row', 'Third floor, at the back', '10001 Ashdown'],
  dayWords: '15 April 2026',
  subject: 'Protection renewal for your Marlo Wendrel',
  body: 'Dear Łucja,\n\nit is time.\n',
}

/** Every text with its place in millimetres from the top left corner. */
async function textsOf(bytes: Uint8Array) {
  const task = getDocument({ data: Uint8Array.from(bytes), verbosity: 0 })
  const pdf = await task.promise
  const page = await pdf.getPage(1)
  const { height } = page.getViewport({ scale: 1 })
  const { items } = await page.getTextContent()
  const texts = items.flatMap(item =>
    'str' in item && item.str.trim() !== ''
      ? [
          {
            text: item.str,
            x: item.transform[4] / mm,
            right: (item.transform[4] + item.width) / mm,
            y: (height - item.transform[5]) / mm,
          },
        ]
      : [],
  )
  const pages = pdf.numPages
  await task.destroy()
  return { texts, pages }
}

describe('a letter to an owner', () => {
  it.each([
    ['A4' as const, { left: 20, top: 45, right: 105, bottom: 90 }],
    ['LETTER' as const, { left: 24, top: 50, right: 124, bottom: 78 }],
  ])('shows the whole address, and nothing of the letter, in the window (%s)', async (paper, window) => {
    const { texts, pages } = await textsOf(await ownerLetterPdf({ ...letter, paper }))
    expect(pages).toBe(1)
    const inside = texts.filter(
      each =>
        each.y > window.top && each.y < window.bottom && each.x >= window.left - 0.1 && each.x < window.right,
    )
    expect(inside.map(each => each.text).join('|')).toBe(
      ['Ashdown Paint Care · 4 Quarry Lane · Ashdown', ...letter.to].join('|'),
    )
    for (const each of inside) {
      expect(each.right).toBeLessThanOrEqual(window.right)
      expect(each.x).toBeCloseTo(25, 1)
    }
    expect(texts.find(each => each.text === letter.subject)!.x).toBeCloseTo(25, 1)
    expect(texts.find(each => each.text === letter.subject)!.y).toBeGreaterThan(window.bottom)
    // Each paragraph in its place, one under the other.
    const [dear, time] = ['Dear Łucja,', 'it is time.'].map(words => texts.find(each => each.text === words))
    expect(dear!.y).toBeLessThan(time!.y)
  })

  it('keeps a long address in the window, and a long letter on further pages', async () => {
    const to = Array.from({ length: 8 }, (_, i) => `Line ${i + 1} of a long address`)
    const { texts, pages } = await textsOf(
      await ownerLetterPdf({ ...letter, to, body: 'A long story.\n'.repeat(120) }),
    )
    for (const line of to) expect(texts.find(each => each.text === line)!.y).toBeLessThan(90)
    expect(pages).toBeGreaterThan(1)
  })
})
