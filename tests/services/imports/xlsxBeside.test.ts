// The parts of a spreadsheet by ECMA-376 part 1: 18.3.1.4 (cells), 18.18.11 (their types); dates counted from 1900.
import { expect, it } from 'vitest'
import { sheetsBeside } from '../../../main/services/imports/xlsxBeside.ts'
import { zipOf } from './zipOf.ts'

const head = '<?xml version="1.0" encoding="UTF-8" standalone="yes"?>'
const main = 'http://schemas.openxmlformats.org/spreadsheetml/2006/main'
const relations = 'http://schemas.openxmlformats.org/package/2006/relationships'
const office = 'http://schemas.openxmlformats.org/officeDocument/2006/relationships'

const sheetOf = (rows: string) =>
  `${head}<worksheet xmlns="${main}"><sheetData>${rows}</sheetData></worksheet>`

/** A spreadsheet with these sheets, each the XML of its rows. Style 1 of its cells is a day. */
function book(...sheets: string[]): Uint8Array {
  const each = (part: (i: number) => string) => sheets.map((_, i) => part(i + 1)).join('')
  return zipOf({
    '[Content_Types].xml': `${head}<Types xmlns="http://schemas.openxmlformats.org/package/2006/content-types"><Default Extension="xml" ContentType="application/xml"/></Types>`,
    '_rels/.rels': `${head}<Relationships xmlns="${relations}"><Relationship Id="r" Type="${office}/officeDocument" Target="xl/workbook.xml"/></Relationships>`,
    'xl/workbook.xml': `${head}<workbook xmlns="${main}" xmlns:r="${office}"><workbookPr/><sheets>${each(i => `<sheet name="S${i}" sheetId="${i}" r:id="r${i}"/>`)}</sheets></workbook>`,
    'xl/_rels/workbook.xml.rels': `${head}<Relationships xmlns="${relations}">${each(i => `<Relationship Id="r${i}" Type="${office}/worksheet" Target="worksheets/sheet${i}.xml"/>`)}<Relationship Id="s" Type="${office}/styles" Target="styles.xml"/></Relationships>`,
    'xl/styles.xml': `${head}<styleSheet xmlns="${main}"><cellXfs count="2"><xf numFmtId="0"/><xf numFmtId="14" applyNumberFormat="1"/></cellXfs></styleSheet>`,
    ...Object.fromEntries(sheets.map((rows, i) => [`xl/worksheets/sheet${i + 1}.xml`, sheetOf(rows)])),
  })
}

const text = (at: string, words: string) => `<c r="${at}" t="inlineStr"><is><t>${words}</t></is></c>`

it('reads texts, numbers, days, times and yes or no as text, from the first sheet that has any', async () => {
  const rows = `<row r="1">${text('A1', 'Name')}${text('B1', 'On')}</row><row r="2">${text('A2', 'Oda &amp; ‏לוי')}<c r="B2" s="1"><v>46127</v></c><c r="C2" s="1"><v>46127.5</v></c><c r="D2" t="b"><v>1</v></c><c r="E2" t="b"><v>0</v></c><c r="F2"><v>4.5</v></c></row>`
  expect(await sheetsBeside(book('', rows))).toEqual([
    ['Name', 'On', '', '', '', ''],
    // 46,127 days from 30 December 1899, as spreadsheets count.
    ['Oda & ‏לוי', '2026-04-15', '2026-04-15T12:00:00.000Z', 'yes', 'no', '4.5'],
  ])
})

it('says of a file that is no spreadsheet what to do, and goes on with the next', async () => {
  for (const bytes of [Buffer.from('PK no archive'), zipOf({ 'a.txt': 'words' })])
    await expect(sheetsBeside(bytes)).rejects.toMatchObject({
      code: 'file-bad',
      message:
        'This spreadsheet cannot be read. It is damaged or no spreadsheet. Save it as XLSX or CSV again, and choose that.',
    })
  expect(await sheetsBeside(book(`<row r="1">${text('A1', 'Name')}</row>`))).toEqual([['Name']])
})

it('that unpacks to more than any list holds ends its thread, not the desk', async () => {
  const row = (i: number) => `<row r="${i}">${text(`A${i}`, 'x'.repeat(200))}</row>`
  const bomb = book(Array.from({ length: 60_000 }, (_, i) => row(i + 1)).join(''))
  // Thirteen megabytes of rows from a file a hundred times smaller.
  expect(bomb.length).toBeLessThan(500_000)
  await expect(sheetsBeside(bomb, { ms: 60_000, mb: 32 })).rejects.toThrow(
    'It is damaged, or larger than a list can be.',
  )
})

it('that takes too long is given up', async () => {
  await expect(
    sheetsBeside(book(`<row r="1">${text('A1', 'Name')}</row>`), { ms: 1, mb: 64 }),
  ).rejects.toThrow('It takes too long to read.')
})
