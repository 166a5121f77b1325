import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import type { SheetFrame } from '../../../main/documents/kit/frame.ts'
import { makeSheet } from '../../../main/documents/kit/makeSheet.ts'
import type { Sheet } from '../../../main/documents/kit/sheet.ts'
import { drawFacts, drawSummed, drawTable } from '../../../main/documents/kit/table.ts'
import { drawWords } from '../../../main/documents/kit/write.ts'
import { pdfFonts, pdfInfo, pdfPlaces, pdfTags, pdfWords } from '../poppler.ts'
import { readPdf } from '../readPdf.ts'

const icon = { bytes: new Uint8Array(readFileSync('assets/icon.png')), width: 1024, height: 1024 }
const frame: SheetFrame = {
  title: 'Quote 41',
  at: 29_604_000,
  paper: 'A4',
  issuer: {
    name: 'Ashdown Paint Care',
    lines: ['4 Quarry Lane', 'desk@example.com'],
    logo: null,
    colour: '#31456b',
  },
  reference: 'quote 41',
  facts: [['Date', 'Wednesday 15 April 2026']],
  to: ['Łucja Birk-Ødegård', '12 Larch Row'],
}
/** Points: 20 and 18 mm. */
const [frameLeft, frameRight] = [56.69, 51.02]
const columns = [
  { title: 'No.', width: 'fit' as const },
  { title: 'What' },
  { title: 'Amount', width: 'fit' as const, align: 'right' as const },
]
const make = (fill: (sheet: Sheet) => void, change: Partial<SheetFrame> = {}) =>
  makeSheet({ ...frame, ...change }, fill)

describe('a sheet of the shop', () => {
  it('says who it comes from, whom it goes to, what it is, and is tagged with its title and language', async () => {
    const bytes = await make(sheet => sheet.paragraph('As we said on the phone.'))
    const info = pdfInfo(bytes)
    expect(info).toMatchObject({ Title: 'Quote 41', Author: 'Ashdown Paint Care', Pages: '1', Tagged: 'yes' })
    expect(info['Page size']).toContain('A4')
    const words = pdfWords(bytes)
    for (const part of [
      'Ashdown Paint Care',
      '4 Quarry Lane',
      'Łucja Birk-Ødegård',
      '12 Larch Row',
      'As we said on the phone.',
    ])
      expect(words).toContain(part)
    expect(words).toMatch(/Date Wednesday 15 April 2026/)
    expect(words).toContain('Ashdown Paint Care · quote 41 page 1 of 1')
    const tags = pdfTags(bytes)
    expect(tags).toContain('H1 "Quote 41"')
    expect(tags).toContain('P "As we said on the phone."')
    // What is at the foot of every page is read to nobody.
    expect(tags).not.toContain('page 1 of 1')
    expect(Buffer.from(bytes).toString('latin1')).toContain('/Lang (en)')
  })

  it('is on letter paper where the shop has it, and the same bytes for the same content', async () => {
    const once = await make(sheet => sheet.paragraph('One'), { paper: 'LETTER' })
    expect(pdfInfo(once)['Page size']).toContain('letter')
    const again = await make(sheet => sheet.paragraph('One'), { paper: 'LETTER' })
    expect(Buffer.from(again).equals(Buffer.from(once))).toBe(true)
  })

  it('shows the shop’s logo, named for who cannot see it, and says the name beside it', async () => {
    const bytes = await make(() => {}, { issuer: { ...frame.issuer, logo: icon } })
    expect(pdfTags(bytes)).toMatch(/Figure \/Alt "Ashdown Paint Care, logo"|Figure/)
    expect(Buffer.from(bytes).toString('latin1')).toContain('/Alt (Ashdown Paint Care, logo)')
    expect(pdfWords(bytes)).toContain('Ashdown Paint Care')
  })

  it('writes names of every script it carries so that they can be copied out again', async () => {
    const names = [
      'Αλέξης Ζορμπάς',
      'Żółć Łódź',
      'Щёлкин',
      'משה כהן',
      'محمد الطويل',
      '王小明',
      '山田たろう',
      '김민준',
      '李明 (VIP) 12',
    ]
    const bytes = await make(sheet => {
      for (const name of names) sheet.paragraph(name)
    })
    // Marks of direction are the reader's own.
    const words = pdfWords(bytes).replaceAll(/[\u200e\u200f\u202a-\u202e]/g, '')
    for (const name of names) expect(words).toContain(name)
  })

  it('keeps what reads from the right in its order beside what reads from the left', async () => {
    const bytes = await make(sheet => sheet.paragraph('Owner: משה כהן-אלון (VIP), car 34'))
    const turned = (word: string) => [...word].reverse().join('')
    const xOf = (part: string) =>
      pdfPlaces(bytes).find(({ word }) => word.includes(part) || turned(word).includes(part))!.x
    // As it is seen, from the left: the label, the last name, the first name, and the rest again from the left.
    expect(xOf('Owner')).toBeLessThan(xOf('אלון'))
    expect(xOf('אלון')).toBeLessThan(xOf('משה'))
    expect(xOf('משה')).toBeLessThan(xOf('VIP'))
    expect(xOf('VIP')).toBeLessThan(xOf('34'))
  })

  it('reads a paragraph one way to its end, also in a line that begins with a name from the right', async () => {
    const name = 'משה כהן'
    const filler = 'and so on '.repeat(9)
    const bytes = await make(sheet => {
      // Begins from the right and goes on from the left, as a line of a bill does.
      sheet.paragraph(`${name}: whole car`)
      sheet.paragraph(`${filler}${name}, ${name}, ${name}, ${name} last`)
      // All of it from the right.
      sheet.paragraph(`${name}, first`)
    })
    const places = pdfPlaces(bytes)
    const xOf = (part: string) => places.find(({ word }) => word.includes(part))!.x
    for (const part of ['whole', 'last']) expect(xOf(part)).toBeGreaterThan(frameLeft + 20)
    expect(xOf('first')).toBeCloseTo(frameLeft, 0)
  })

  it('keeps every column on the page, whatever the others say', async () => {
    const wide = 'a long story of a bay, a person and a time '
    const bytes = await make(sheet =>
      drawTable(
        sheet,
        [
          { title: 'Step' },
          { title: 'From', width: 'fit' },
          { title: 'To', width: 'fit' },
          { title: 'Bay', width: 'fit' },
          { title: 'Who', width: 'fit' },
          { title: 'Done', width: 34 },
        ],
        [[wide.repeat(3), wide, wide, wide.repeat(2), wide, 'no']],
      ),
    )
    const at = (title: string) => pdfPlaces(bytes).find(({ word }) => word === title)!.x
    const places = ['Step', 'From', 'To', 'Bay', 'Who', 'Done'].map(at)
    expect(places).toEqual(places.toSorted((a, b) => a - b))
    const width = 595.28 - frameLeft - frameRight
    expect(at('Done')).toBeCloseTo(frameLeft + width - 34 + 3.5, 0)
    expect(at('From') - at('Step')).toBeGreaterThan(width * 0.2)
  })

  it('wraps a long name, and breaks a word that is wider than the page', async () => {
    const long = 'x'.repeat(400)
    const { pages } = await readPdf(
      await make(sheet => sheet.paragraph(long), { to: ['Longname '.repeat(30)] }),
    )
    const xs = pages.flatMap(page => page.lines).filter(line => /^x+$/.test(line.trim()))
    expect(xs.length).toBeGreaterThan(2)
    expect(xs.map(line => line.trim()).join('')).toBe(long)
  })

  it('goes on over the pages: 40 lines with their head on each page and every amount once', async () => {
    const rows = Array.from({ length: 40 }, (_, i) => [
      String(i + 1),
      { words: `Line ${i + 1} `.repeat(20), under: 'front, roof and bonnet' },
      `${1000 + i}.00`,
    ])
    const bytes = await make(sheet => {
      sheet.heading('Lines')
      drawSummed(sheet, columns, rows, [{ name: 'Total', amount: '40,780.00', strong: true }])
    })
    const pages = pdfWords(bytes).split('\f').filter(Boolean)
    expect(pages).toHaveLength(3)
    for (const [i, page] of pages.entries()) {
      expect(page).toContain('No. What Amount')
      expect(page).toContain(`page ${i + 1} of 3`)
    }
    for (let i = 0; i < 40; i++) expect(pages.join(' ').split(`${1000 + i}.00`)).toHaveLength(2)
    expect(pages[2]).toContain('Total 40,780.00')
    // Heads are read once.
    expect(pdfTags(bytes).split('"What"')).toHaveLength(2)
  })

  it('tears a row only where it is taller than a page, and then loses nothing', async () => {
    const words = Array.from({ length: 3000 }, (_, i) => `w${i}`)
    const bytes = await make(sheet =>
      drawTable(sheet, columns, [
        ['1', words.join(' '), '1.00'],
        ['2', 'after', '2.00'],
      ]),
    )
    const seen = pdfWords(bytes)
    for (const word of words) expect(seen).toContain(word)
    expect(seen).toContain('2 after 2.00')
  })

  it('ties a name to its fact, and leaves out what is empty', async () => {
    const tags = pdfTags(
      await make(sheet =>
        drawFacts(sheet, [
          ['Plate', 'DM 4711'],
          ['Odometer', ''],
        ]),
      ),
    )
    expect(tags).toMatch(/TH: \/Scope \/Row "Plate" TD "DM 4711"/)
    expect(tags).not.toContain('Odometer')
  })

  it.each<[string, (sheet: Sheet) => void]>([
    ['a paragraph', sheet => sheet.paragraph('what is below')],
    ['a list', sheet => sheet.list(['what is below', 'and more'])],
    ['a table', sheet => drawTable(sheet, columns, [['1', 'what is below', '1.00']])],
    [
      'a table whose first row is tall',
      sheet => drawTable(sheet, columns, [['1', 'what is below\n'.repeat(12), '1.00']]),
    ],
    ['facts', sheet => drawFacts(sheet, [['Is', 'what is below']])],
    [
      'a picture',
      sheet =>
        sheet.figure(
          'mark',
          (x, y) => drawWords(sheet.pdf, 'what is below', { font: 'regular', size: 9 }, { x, y, width: 90 }),
          { width: 90, height: 60 },
        ),
    ],
  ])('never leaves a heading alone at the foot of a page, before %s', async (_, below) => {
    for (let gap = 520; gap < 640; gap += 8) {
      const bytes = await make(sheet => {
        sheet.gap(gap)
        sheet.heading('Below')
        below(sheet)
      })
      const { pages } = await readPdf(bytes)
      const at = pages.findIndex(page => page.lines.includes('Below'))
      expect(pages[at]!.lines.join('\n'), `after ${gap} points`).toContain('what is below')
      expect(pdfTags(bytes)).toMatch(/H2 "Below".*what is below/)
    }
  })

  it('keeps what a table comes to with its last row, wherever the page ends', async () => {
    const totals = ['Off', 'Without tax', 'Tax', 'Total'].map(name => ({ name, amount: '1.00' }))
    for (let rows = 22; rows < 36; rows++) {
      const lines = Array.from({ length: rows }, (_, i) => [String(i + 1), `Line ${i + 1}.`, '1.00'])
      const { pages } = await readPdf(await make(sheet => drawSummed(sheet, columns, lines, totals)))
      const last = pages.at(-1)!.lines.join('\n')
      for (const name of [`Line ${rows}.`, ...totals.map(each => each.name)])
        expect(last, `${rows} rows`).toContain(name)
    }
  })

  it('lets what does not fit beside the dot of a list go on under its own beginning', async () => {
    const bytes = await make(sheet => sheet.list([`first ${'and so on '.repeat(30)}`]))
    const places = pdfPlaces(bytes).filter(({ word }) => ['•', 'first', 'and', 'so', 'on'].includes(word))
    const [dot, ...words] = places.map(({ x }) => x)
    expect(Math.min(...words)).toBeCloseTo(words[0]!, 1)
    expect(dot).toBeLessThan(words[0]! - 5)
    expect(pdfTags(bytes)).toMatch(/L LI Lbl "• " LBody "first/)
  })

  it('keeps its description readable XML, whatever the shop is called', async () => {
    const bytes = await make(() => {}, { issuer: { ...frame.issuer, name: 'Paint & <Coat>' } })
    expect(pdfInfo(bytes).Author).toBe('Paint & <Coat>')
    expect(xmpOf(bytes)).toContain('<rdf:li>Paint &amp; &lt;Coat&gt;</rdf:li>')
  })

  // ISO 19005-3 (PDF/A-3), the requirements by clause, from memory: no validator could be had where this was written.
  it('meets our list of what PDF/A-3a asks for', async () => {
    const rows = [['1', { words: 'משה 王小明', under: 'front' }, '1.00']]
    const bytes = await make(
      sheet => {
        sheet.heading('Lines')
        drawTable(sheet, columns, rows)
        sheet.figure('mark', (x, y) => sheet.pdf.rect(x, y, 9, 9).fill('#31456b'), { width: 9, height: 9 })
      },
      { subset: 'PDF/A-3a', issuer: { ...frame.issuer, logo: icon } },
    )
    const file = Buffer.from(bytes).toString('latin1')
    // 6.1.2: the header and a comment of four bytes above 127; 6.1.3: an ID, and no encryption.
    expect(file).toMatch(/^%PDF-1\.7\n%[\x80-\xff]{4}/)
    expect(file).toMatch(/trailer[\s\S]*\/ID \[/)
    expect(file).not.toContain('/Encrypt')
    // 6.1.7.2: no LZW; 6.2.3: an output intent with its profile.
    expect(file).not.toContain('LZWDecode')
    expect(file).toMatch(/\/OutputIntents \[/)
    expect(file).toMatch(/\/S \/GTS_PDFA1/)
    // 6.2.11: every font embedded, and its letters known by Unicode (a).
    const fonts = pdfFonts(bytes)
    expect(fonts.length).toBeGreaterThan(1)
    for (const font of fonts) expect(font).toMatchObject({ embedded: true, unicode: true })
    // 6.6.2: the description says part and level, uncompressed; 6.7: marked, with a structure and a language.
    expect(xmpOf(bytes)).toMatch(/<pdfaid:part>3<[\s\S]*<pdfaid:conformance>A</)
    expect(pdfInfo(bytes).Tagged).toBe('yes')
    expect(file).toContain('/Lang (en)')
    // 6.6.1, 6.5: no scripts, no actions.
    expect(file).not.toMatch(/\/JavaScript|\/JS |\/AA |\/Launch/)
  })
})

/** The file's own description; it must not be compressed. */
function xmpOf(bytes: Uint8Array): string {
  return /<x:xmpmeta[\s\S]*<\/x:xmpmeta>/.exec(new TextDecoder().decode(bytes))![0]
}
