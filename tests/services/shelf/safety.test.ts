import { beforeEach, describe, expect, it } from 'vitest'
import { bottleLabel } from '../../../main/services/shelf/bottleLabel.ts'
import { getSafety, saveSafety, sheetFile, uploadSheet } from '../../../main/services/shelf/safety.ts'
import type { SafetyInput } from '../../../main/services/shelf/safetyInputs.ts'
import { safetyWarnings } from '../../../main/services/shelf/safetyWarnings.ts'
import { getRules, saveRules } from '../../../main/services/shelf/shelfRules.ts'
import { readPdf } from '../../documents/readPdf.ts'
import { makeDesk, type TestDesk } from '../makeDesk.ts'
import { type ShelfShop, shelfShop, stock } from './shelfShop.ts'

let desk: TestDesk
let shop: ShelfShop

beforeEach(async () => {
  desk = await makeDesk('2026-04-15T11:00:00Z')
  shop = await shelfShop(desk)
})

const wipe = (productId: string): SafetyInput => ({
  productId,
  revisedOn: '2025-02-11',
  hazardCodes: ['H225', 'h319', 'H336'],
  precautionaryCodes: ['P210', 'P280'],
  signalWord: 'Danger',
  protection: ['nitrile gloves', 'safety glasses'],
  storageGroup: 'flammable',
  unNumber: 'UN 1993',
  ph: null,
  maker: 'Ovrel Surface Chemistry, +1 212-555-0143',
  note: '',
})

describe('a safety record', () => {
  it('is silent on everything before anybody has read the sheet, and says so for each point', async () => {
    const view = await getSafety(desk, { productId: shop.coating })
    expect(view).toMatchObject({ version: 0, sheet: null, hazardCodes: null, regime: 'us-osha' })
    // Storage range and life after opening were entered with the product; the rest nobody has looked up.
    expect(view.silences.map(each => each.field)).toEqual([
      'revisedOn',
      'hazardCodes',
      'precautionaryCodes',
      'signalWord',
      'protection',
      'storageGroup',
      'unNumber',
    ])
    // A sheet nobody has filed is not silent: it is not there.
    for (const { words } of view.silences) expect(words).toContain('No data sheet is filed')
    const filed = await uploadSheet(desk, {
      productId: shop.coating,
      fileName: 'two.pdf',
      revisedOn: '2025-01-31',
      bytes: pdf,
    })
    expect(filed.silences[0]!.words).toBe(
      'The data sheet is silent on its hazard statements; ask the supplier, and do not guess.',
    )
    expect(view.caution).toContain('Treat it as harmful until somebody has read the sheet')
  })

  it('draws its label from the codes: flame and exclamation mark, Danger (CLP Annex I and III)', async () => {
    const view = await saveSafety(desk, wipe(shop.coating))
    expect(view.label.pictograms.map(each => each.code)).toEqual(['GHS02', 'GHS07'])
    expect(view.label.signalWord).toBe('Danger')
    // The US spelling of the same statement.
    expect(view.label.hazards[0]).toEqual({ code: 'H225', text: 'Highly flammable liquid and vapor' })
    expect(view.unNumber).toMatch(/1993/)
    expect(view.doubts).toEqual([])
    expect(view.caution).toBe(
      'Ovrel Two: DANGER, wear nitrile gloves, safety glasses. Read its safety data sheet first; the sheet and local rules decide.',
    )
    const doubted = await saveSafety(desk, {
      ...wipe(shop.coating),
      signalWord: 'Warning',
      version: view.version,
    })
    expect(doubted.doubts).toEqual([expect.stringContaining('call for the signal word Danger')])
    expect(doubted.label.signalWord).toBe('Warning')
  })

  it.each([
    [{ hazardCodes: ['H999'] }, 'hazardCodes.0'],
    [{ precautionaryCodes: ['P210', 'P999'] }, 'precautionaryCodes.1'],
    [{ revisedOn: '2025-02-30' }, 'revisedOn'],
    [{ ph: 15 }, 'ph'],
    [{ unNumber: '12' }, 'unNumber'],
  ])('refuses %o by its field', async (change, field) => {
    await expect(saveSafety(desk, { ...wipe(shop.coating), ...change })).rejects.toMatchObject({ field })
  })

  it('takes one edit at a time', async () => {
    const { version } = await saveSafety(desk, wipe(shop.coating))
    await saveSafety(desk, { ...wipe(shop.coating), version })
    await expect(saveSafety(desk, { ...wipe(shop.coating), version })).rejects.toMatchObject({
      code: 'stale',
    })
  })
})

const pdfOf = (words: string) =>
  new TextEncoder().encode(`%PDF-1.7\n1 0 obj (${words}) endobj\nstartxref\n9\n%%EOF\n`)
const pdf = pdfOf('a sheet')

describe('a data sheet', () => {
  it('is kept as it came, with the date of its revision, and the one before it stays', async () => {
    const first = await uploadSheet(desk, {
      productId: shop.coating,
      fileName: 'two.pdf',
      revisedOn: '2022-01-31',
      bytes: pdf,
    })
    expect(first).toMatchObject({ revisedOn: '2022-01-31', sheet: { name: 'two.pdf', size: pdf.length } })
    const newer = pdfOf('a newer one')
    await uploadSheet(desk, {
      productId: shop.coating,
      fileName: '../two v2.pdf',
      revisedOn: '2026-01-31',
      bytes: newer,
    })
    const file = await sheetFile(desk, { productId: shop.coating })
    expect([file.name, file.type]).toEqual(['.. two v2.pdf', 'application/pdf'])
    expect(new Uint8Array(file.bytes)).toEqual(newer)
    expect(await desk.store.read.storedFile.count()).toBe(2)
  })

  it('is known by its first bytes, not by its name', async () => {
    const upload = (bytes: Uint8Array<ArrayBuffer>) =>
      uploadSheet(desk, { productId: shop.coating, fileName: 'sheet.pdf', revisedOn: '2026-01-31', bytes })
    await expect(upload(new TextEncoder().encode('<html>'))).rejects.toMatchObject({ code: 'file-type' })
    await expect(upload(pdf.slice(0, 20))).rejects.toMatchObject({ code: 'file-broken' })
    expect(await desk.store.read.storedFile.count()).toBe(0)
  })

  it.each(['2026-04-16', '2030-01-01', '1990-12-31', '0001-01-01', '2026-02-30'])(
    'cannot have been revised on %s, uploaded or entered',
    async revisedOn => {
      const sheet = { productId: shop.coating, fileName: 'two.pdf', revisedOn, bytes: pdf }
      await expect(uploadSheet(desk, sheet)).rejects.toMatchObject({ field: 'revisedOn' })
      await expect(saveSafety(desk, { ...wipe(shop.coating), revisedOn })).rejects.toMatchObject({
        field: 'revisedOn',
      })
      expect((await getSafety(desk, { productId: shop.coating })).version).toBe(0)
    },
  )

  it('revised today is taken', async () => {
    const { revisedOn } = await saveSafety(desk, { ...wipe(shop.coating), revisedOn: '2026-04-15' })
    expect(revisedOn).toBe('2026-04-15')
  })
})

describe('the shelf as a whole', () => {
  it('warns of an acid beside a bleach, of what nobody can place, of sheets that lack or are old', async () => {
    await stock(desk, shop.coating, shop.sizes.coating, 1)
    await stock(desk, shop.topper, shop.sizes.topper, 1)
    await saveSafety(desk, { ...wipe(shop.coating), storageGroup: 'acid' })
    await saveSafety(desk, { ...wipe(shop.topper), storageGroup: 'bleach' })
    await uploadSheet(desk, {
      productId: shop.topper,
      fileName: 'veil.pdf',
      revisedOn: '2022-01-31',
      bytes: pdf,
    })
    const { storage, sheets, caution } = await safetyWarnings(desk)
    expect(storage).toEqual([
      {
        place: 'Cabinet 1',
        productIds: [shop.coating, shop.topper],
        words: expect.stringContaining('chlorine gas'),
      },
    ])
    expect(sheets.map(each => each.words)).toEqual([
      'No data sheet of Ovrel Two is kept here: ask the supplier for it.',
      expect.stringContaining('is of 31 January 2022'),
    ])
    expect(caution).toContain('decide')
  })

  it('adds up what burns against the limit the owner entered, and leaves what is silent apart', async () => {
    await stock(desk, shop.coating, shop.sizes.coating, 3)
    await stock(desk, shop.topper, shop.sizes.topper, 1)
    await saveSafety(desk, wipe(shop.coating))
    const { regimeUsed: _, ...rules } = await getRules(desk)
    await saveRules(desk, { ...rules, flammableLimitMl: 140 })
    const { flammable } = await safetyWarnings(desk)
    expect(flammable).toMatchObject({
      totalMl: 150,
      byCode: { H224: 0, H225: 150, H226: 0, H227: 0 },
      silentMl: 500,
      limitMl: 140,
      state: 'over',
    })
  })
})

describe('the label of a decanted bottle', () => {
  it('says what the record says, and what it is silent on', async () => {
    const [lotId] = await stock(desk, shop.coating, shop.sizes.coating, 1, { expiresOn: '2027-03-01' })
    await saveSafety(desk, { ...wipe(shop.coating), protection: null })
    const { bytes, name } = await bottleLabel(desk, { lotId: lotId!, origin: 'http://127.0.0.1:4410' })
    expect(name).toBe('label-1.pdf')
    const { pages } = await readPdf(bytes)
    const words = pages[0]!.lines.join(' ')
    for (const part of [
      'Ovrel Two',
      'DANGER',
      'Highly flammable liquid and vapor.',
      'no. 1, batch K-1, use by 1 March 2027',
    ])
      expect(words).toContain(part)
    expect(words).toContain('silent on protective equipment')
    expect(words).toContain('own computer only')
  })

  it.each([
    ['http://192.168.1.20:4410', false],
    ['http://localhost:4410', true],
    ['http://[::1]:4410', true],
    ['null', true],
  ])('printed at %s says whether its code opens elsewhere', async (origin, onlyHere) => {
    const [lotId] = await stock(desk, shop.coating, shop.sizes.coating, 1)
    const { pages } = await readPdf((await bottleLabel(desk, { lotId: lotId!, origin })).bytes)
    expect(pages[0]!.lines.join(' ').includes('own computer only')).toBe(onlyHere)
  })
})
