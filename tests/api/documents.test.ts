import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { readPdf } from '../documents/readPdf.ts'
import { shelfShop, stock } from '../services/shelf/shelfShop.ts'
import { type Api, makeApi } from './makeApi.ts'
import { type DoorHost, makeDoor } from './makeDoor.ts'

let api: Api
beforeEach(async () => {
  api = await makeApi('2026-04-15T12:00:00Z')
})

describe('the documents of the shelf, over the handler', () => {
  it('are an order as a PDF, a label, and a data sheet as it was uploaded', async () => {
    const shop = await shelfShop(api.desk)
    const [lotId] = await stock(api.desk, shop.coating, shop.sizes.coating, 1)
    const { data: drafts } = await api.mutate('orders.propose', {
      lines: [{ offerId: shop.offers.coating, packs: 2 }],
    })
    const order = await api.get(drafts[0].pdfPath)
    expect(order.headers.get('content-type')).toBe('application/pdf')
    expect(order.headers.get('content-disposition')).toMatch(/^inline; filename="order-1\.pdf"/)
    expect(order.headers.get('content-security-policy')).toContain("default-src 'none'")
    const { pages } = await readPdf(new Uint8Array(await order.arrayBuffer()))
    expect(pages[0]!.lines.join('\n')).toMatch(/C-4800\s+Ovrel Two\s+50 ml\s+2\s+48\.00\s+96\.00/)

    const label = await api.get(`/documents/label/${lotId}.pdf`)
    expect((await readPdf(new Uint8Array(await label.arrayBuffer()))).title).toBe('Label: Ovrel Two')

    const bytes = Buffer.from('%PDF-1.7\n1 0 obj (a sheet) endobj\nstartxref\n9\n%%EOF\n')
    const { data: safety } = await api.mutate('safety.uploadSheet', {
      productId: shop.coating,
      fileName: 'Blatt Ü.pdf',
      revisedOn: '2026-01-31',
      base64: bytes.toString('base64'),
    })
    const sheet = await api.get(safety.sheet.path)
    expect(Buffer.from(await sheet.arrayBuffer()).equals(bytes)).toBe(true)
    expect(sheet.headers.get('content-disposition')).toContain("filename*=UTF-8''Blatt%20%C3%9C.pdf")
    expect(sheet.headers.get('x-content-type-options')).toBe('nosniff')
  })

  it('that are not there are answered in words', async () => {
    const shop = await shelfShop(api.desk)
    for (const path of [
      '/documents/order/none.pdf',
      '/documents/label/none.pdf',
      `/documents/sheet/${shop.coating}`,
    ]) {
      const answer = await api.get(path)
      expect(answer.status).toBe(404)
      expect(await answer.text()).toMatch(/\.$/)
    }
  })

  it('take a sheet of several megabytes, and refuse one past the limit by its field', async () => {
    const shop = await shelfShop(api.desk)
    const upload = (size: number) =>
      api.mutate('safety.uploadSheet', {
        productId: shop.coating,
        fileName: 'sheet.pdf',
        revisedOn: '2026-01-31',
        base64: Buffer.concat([
          Buffer.from('%PDF-1.7\n'),
          Buffer.alloc(size),
          Buffer.from('\nstartxref\n9\n%%EOF\n'),
        ]).toString('base64'),
      })
    expect((await upload(5 * 1024 * 1024)).status).toBe(200)
    expect(await upload(15 * 1024 * 1024)).toMatchObject({ status: 400, fault: { field: 'file' } })
  })
})

describe('the documents of the shelf, at the web host’s door', () => {
  let door: DoorHost
  beforeEach(async () => {
    door = await makeDoor('2026-04-15T12:00:00Z')
  })
  afterEach(() => door.close())

  it('are for those who were let in', async () => {
    const shop = await shelfShop(door.desk)
    const [lotId] = await stock(door.desk, shop.coating, shop.sizes.coating, 1)
    const path = `/documents/label/${lotId}.pdf`
    expect((await fetch(door.address + path)).status).toBe(401)
    const label = await fetch(door.address + path + door.link, { headers: door.headers })
    expect(label.status).toBe(200)
    expect((await readPdf(new Uint8Array(await label.arrayBuffer()))).pages).toHaveLength(1)
  })
})
