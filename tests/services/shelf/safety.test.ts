import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { bottleLabel } from '../../../main/services/shelf/bottleLabel.ts'
import {
  getSafety,
  type SafetyInput,
  saveSafety,
  sheetFile,
  uploadSheet,
} from '../../../main/services/shelf/safety.ts'
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
afterEach(() => desk.close())

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

const pdf = new TextEncoder().encode('%PDF-1.7\n%…\n')

describe('a data sheet', () => {
  it('is kept as it came, with the date of its revision, and the one before it stays', async () => {
    const first = await uploadSheet(desk, {
      productId: shop.coating,
      fileName: 'two.pdf',
      revisedOn: '2022-01-31',
      bytes: pdf,
    })
    expect(first).toMatchObject({ revisedOn: '2022-01-31', sheet: { name: 'two.pdf', size: pdf.length } })
    const newer = new TextEncoder().encode('%PDF-1.7\nnewer')
    await uploadSheet(desk, {
      productId: shop.coating,
      fileName: '../two v2.pdf',
      revisedOn: '2026-01-31',
      bytes: newer,
    })
    const file = await sheetFile(desk, { productId: shop.coating })
    expect([file.name, file.type, new TextDecoder().decode(file.bytes)]).toEqual([
      '.. two v2.pdf',
      'application/pdf',
      '%PDF-1.7\nnewer',
    ])
    expect(await desk.store.read.storedFile.count()).toBe(2)
  })

  it('is known by its first bytes, not by its name', async () => {
    const upload = (bytes: Uint8Array) =>
      uploadSheet(desk, { productId: shop.coating, fileName: 'sheet.pdf', revisedOn: '2026-01-31', bytes })
    await expect(upload(new TextEncoder().encode('<html>'))).rejects.toMatchObject({ code: 'file-type' })
    await expect(upload(new Uint8Array())).rejects.toMatchObject({ code: 'file-size' })
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
      byCode: { H224: 0, H225: 150, H226: 0 },
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
      'no. 1, use by 1 March 2027',
    ])
      expect(words).toContain(part)
    expect(words).toContain('silent on protective equipment')
  })
})
