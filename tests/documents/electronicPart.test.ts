import { spawnSync } from 'node:child_process'
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs'
import { expect, it } from 'vitest'
import { electronicName } from '../../main/documents/electronicPart.ts'
import { invoicePdf } from '../../main/documents/invoicePdf.ts'
import { ciiOf } from '../../main/domain/invoicing/index.ts'
import { anInvoice } from '../domain/invoicing/anInvoice.ts'
import { anInvoiceSheet } from './anInvoiceSheet.ts'
import { pdfFonts, pdfInfo } from './poppler.ts'

const icon = { bytes: new Uint8Array(readFileSync('assets/icon.png')), width: 1024, height: 1024 }
const issuer = { ...anInvoiceSheet(1).issuer, logo: icon }
const xml = ciiOf(anInvoice)
const made = (more = {}) =>
  invoicePdf(anInvoiceSheet(2, { xml, issuer, to: ['陈晓明', 'שירה לוי'], ...more }))

it('holds the XML, byte for byte, as two other readers take it out', async () => {
  const bytes = await made()
  const task = getDocument({ data: Uint8Array.from(bytes), verbosity: 0 })
  const files = (await (await task.promise).getAttachments()) as Record<string, { content: Uint8Array }>
  expect(Object.keys(files)).toEqual([electronicName])
  expect(new TextDecoder().decode(files[electronicName]!.content)).toBe(xml)
  await task.destroy()
  const folder = mkdtempSync(join(tmpdir(), 'electronic-'))
  try {
    writeFileSync(join(folder, 'it.pdf'), bytes)
    const options = ['-save', '1', '-o', join(folder, 'out.xml'), join(folder, 'it.pdf')]
    expect(spawnSync('pdfdetach', options, { encoding: 'utf8' })).toMatchObject({ status: 0, stderr: '' })
    expect(readFileSync(join(folder, 'out.xml'), 'utf8')).toBe(xml)
  } finally {
    rmSync(folder, { recursive: true })
  }
})

// ISO 19005-3 (PDF/A-3), the requirements by clause, from memory: no package that could be had carries a validator.
it('meets our list of what PDF/A-3a asks of a document with a file inside', async () => {
  const bytes = await made()
  const file = Buffer.from(bytes).toString('latin1')
  // 6.1.2, 6.1.3: header, four bytes above 127, an ID, no encryption; 6.1.7.2: no LZW.
  expect(file).toMatch(/^%PDF-1\.7\n%[\x80-\xff]{4}/)
  expect(file).toMatch(/trailer[\s\S]*\/ID \[/)
  expect(file).not.toMatch(/\/Encrypt|LZWDecode/)
  // 6.2.3: the output intent brings its profile, of three colours.
  expect(file).toMatch(/\/OutputIntents \[\d+ 0 R\]/)
  expect(file).toMatch(/\/S \/GTS_PDFA1[\s\S]*\/DestOutputProfile \d+ 0 R/)
  expect(file).toMatch(/\/N 3\b/)
  // 6.2.8: no picture is smoothed by the reader. 6.2.11: every font inside, its letters known (a).
  expect(file).not.toContain('/Interpolate true')
  const fonts = pdfFonts(bytes)
  expect(fonts.length).toBeGreaterThan(1)
  for (const font of fonts) expect(font).toMatchObject({ embedded: true, unicode: true })
  // 6.7: marked, a structure, a language. 6.5, 6.6.1: no actions, no scripts.
  expect(pdfInfo(bytes).Tagged).toBe('yes')
  expect(file).toContain('/Lang (en)')
  expect(file).not.toMatch(/\/JavaScript|\/JS |\/AA |\/Launch/)
  // 6.8: the file is named twice, has its kind, its day and its relation, hangs on the document and in its list.
  expect(file).toMatch(/\/AFRelationship \/Alternative/)
  expect(file).toMatch(/\/F \(factur-x\.xml\)/)
  expect(file).toMatch(/\/UF \(factur-x\.xml\)/)
  expect(file).toMatch(/\/Type \/EmbeddedFile[\s\S]{0,300}\/Subtype \/text#2Fxml/)
  expect(file).toMatch(/\/Params <<[\s\S]{0,120}\/ModDate \(D:20260415/)
  expect(file).toMatch(/\/AF \[\d+ 0 R\]/)
  expect(file).toMatch(/\/EmbeddedFiles/)
  // 6.6.2: the description is not compressed, says part and level, and explains the fields that are not the norm's own.
  const xmp = /<x:xmpmeta[\s\S]*<\/x:xmpmeta>/.exec(new TextDecoder().decode(bytes))![0]
  expect(xmp).toMatch(/<pdfaid:part>3<[\s\S]*<pdfaid:conformance>A</)
  for (const [name, value] of [
    ['DocumentType', 'INVOICE'],
    ['DocumentFileName', electronicName],
    ['Version', '1.0'],
    ['ConformanceLevel', 'EN 16931'],
  ]) {
    expect(xmp).toContain(`<fx:${name}>${value}</fx:${name}>`)
    expect(xmp).toContain(`<pdfaProperty:name>${name}</pdfaProperty:name>`)
  }
  // 6.6.2.3: title and days stand in both descriptions alike.
  expect(xmp).toContain('<rdf:li xml:lang="x-default">Invoice INV-0042</rdf:li>')
  expect(xmp).toContain('<xmp:CreateDate>2026-04-15T')
  expect(pdfInfo(bytes).Title).toBe('Invoice INV-0042')
})

it('is the same form without a file where there is no electronic invoice', async () => {
  const bytes = await made({ xml: null })
  const file = Buffer.from(bytes).toString('latin1')
  expect(file).toContain('<pdfaid:part>3<')
  expect(file).not.toMatch(/EmbeddedFile|AFRelationship|fx:ConformanceLevel/)
})
