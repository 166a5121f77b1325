import { existsSync, readFileSync, writeFileSync } from 'node:fs'
import { dirname, join } from 'node:path'
import Database from 'better-sqlite3'
import { beforeEach, expect, it } from 'vitest'
import { z } from 'zod'
import {
  everythingFile,
  everythingStands,
  forgetEverything,
  packEverything,
  stopPacking,
} from '../../../main/services/leaving/everything.ts'
import { saveCustomer } from '../../../main/services/records/customers.ts'
import { bookJob } from '../bookJob.ts'
import { makeDesk, type TestDesk } from '../makeDesk.ts'
import { type ShelfShop, shelfShop } from '../shelf/shelfShop.ts'
import { readList, unzip } from './unzip.ts'

let desk: TestDesk
let shop: ShelfShop
beforeEach(async () => {
  desk = await makeDesk()
  shop = await shelfShop(desk)
})

const path = () => join(dirname(desk.store.source.file), 'leaving', 'everything.zip')

async function packed() {
  packEverything(desk)
  await expect.poll(() => everythingStands(desk).working).toBe(null)
  expect(everythingStands(desk)).toMatchObject({ ready: { madeAt: desk.now() }, failed: null })
  return unzip(readFileSync(path()))
}

it('holds a list of every table with every row, and one JSON that keeps to the schema beside it', async () => {
  const job = await bookJob(desk, shop, { treatments: ['twoLayers'] })
  const name = '=HYPERLINK("x")\n👩‍🔧 שלום "q", \'a\''
  await saveCustomer(desk, { name: 'Edda Marsh', note: name })
  const files = await packed()
  const database = new Database(desk.store.source.file, { readonly: true })
  const rowsOf = (model: string) => database.prepare(`select count(*) from "${model}"`).pluck().get()
  const models = database
    .prepare(
      "select name from sqlite_master where type = 'table' and name not glob '_*' and name not glob 'sqlite*'",
    )
    .pluck()
    .all() as string[]
  const json = JSON.parse(files.get('shop.json')!.toString())
  const lists = Object.keys(json.tables)
  // All but what can be made anew from the rest.
  expect(lists).toHaveLength(models.length - 1)
  expect(lists).toEqual(
    expect.arrayContaining(
      ['customers', 'job-steps', 'stock-moves', 'audit-lines', 'safety'].map(list =>
        list === 'safety' ? 'product-safety' : list,
      ),
    ),
  )
  for (const list of lists)
    expect([list, readList(files, list).length]).toEqual([list, json.tables[list].length])
  for (const [model, list] of [
    ['JobStep', 'job-steps'],
    ['Product', 'products'],
    ['AuditLine', 'audit-lines'],
  ])
    expect(json.tables[list!]).toHaveLength(rowsOf(model!) as number)
  database.close()

  const schema = JSON.parse(files.get('shop.schema.json')!.toString())
  expect(() => z.fromJSONSchema(schema).parse(json)).not.toThrow()
  json.tables.jobs[0].number = 'one'
  expect(() => z.fromJSONSchema(schema).parse(json)).toThrow()

  const edda = readList(files, 'customers').find(row => row.Name === 'Edda Marsh')
  expect(edda?.Note).toBe(`'${name}`)
  expect(json.tables.customers.find((row: { note: string }) => row.note === name)).toBeDefined()
  const step = readList(files, 'job-steps').find(row => row['Product id'] === shop.coating)
  expect(step).toMatchObject({ Product: 'Ovrel Two', 'Job id': job.id, Job: `job ${job.number}` })
  expect(step?.Bay).toMatch(/^Bay [34]$/)
  expect(step?.['Start at']).toMatch(/^2026-04-\d\dT\d\d:\d\d-04:00$/)
})

it('holds no key and no password', async () => {
  await desk.store.transact({ who: 'test', at: 1 }, async tx => {
    const mail = {
      host: 'mail.example.com',
      port: 587,
      security: 'tls',
      user: 'shop-login',
      fromName: 'A',
      fromAddress: 'a@example.com',
    }
    await tx.mailSettings.create({ data: mail })
    await tx.feedToken.create({ data: { name: 'Phone', hash: 'f'.repeat(64), createdAt: 1 } })
    const [bay] = Object.values(shop.bays)
    await tx.sensorToken.create({ data: { bayId: bay!, name: 'Wall', hash: 'e'.repeat(64), createdAt: 1 } })
  })
  desk.store.secrets.set('mail', 'hunter-two-secret')
  const all = [...(await packed()).values()].map(bytes => bytes.toString()).join()
  expect(all).toContain('mail.example.com')
  for (const secret of ['shop-login', 'ffffffff', 'eeeeeeee', 'hunter-two-secret'])
    expect(all).not.toContain(secret)
})

it('carries the data sheets, and two of one name under two', async () => {
  const sheet = (text: string) => ({
    name: 'sheet/../a.pdf',
    type: 'application/pdf',
    bytes: Buffer.from(text),
    size: 3,
    sha256: text,
    at: 1,
    who: 'Jo',
  })
  await desk.store.transact({ who: 'test', at: 1 }, tx =>
    tx.storedFile.createMany({ data: [sheet('one'), sheet('two')] }),
  )
  const files = await packed()
  const kept = [...files]
    .filter(([name]) => name.startsWith('files/'))
    .map(([name, bytes]) => [name, bytes.toString()])
  expect(kept).toEqual([
    ['files/1 sheet_.._a.pdf', 'one'],
    ['files/2 sheet_.._a.pdf', 'two'],
  ])
})

it('shows the moment it was begun, whatever is saved while it is packed', async () => {
  packEverything(desk)
  await expect.poll(() => everythingStands(desk).working?.total, { interval: 1 }).toBeGreaterThan(0)
  await saveCustomer(desk, { name: 'Late Comer' })
  await expect.poll(() => everythingStands(desk).working).toBe(null)
  expect(readFileSync(path()).length).toBe(everythingStands(desk).ready?.bytes)
  expect(readList(unzip(readFileSync(path())), 'customers').map(row => row.Name)).not.toContain('Late Comer')
})

it('can be stopped, sent, and thrown away; is gone after a day; and is written down', async () => {
  packEverything(desk)
  await stopPacking(desk.store)
  expect(everythingStands(desk)).toEqual({ working: null, ready: null, failed: null })
  await expect(everythingFile(desk)).rejects.toMatchObject({ code: 'missing' })
  await packed()
  const sent = await everythingFile(desk)
  expect(sent.name).toBe('Ashdown Paint Care 2026-04-15.zip')
  expect(Buffer.from(await new Response(sent.bytes).arrayBuffer())).toEqual(readFileSync(path()))
  forgetEverything(desk)
  expect(existsSync(path())).toBe(false)
  await packed()
  desk.setNow('2026-04-16T07:41:00Z')
  expect(everythingStands(desk).ready).toBe(null)
  expect(existsSync(path())).toBe(false)
  expect(await desk.store.read.auditLine.count({ where: { act: 'data packed' } })).toBe(3)
})

it('says what the disk said where it cannot be written', async () => {
  writeFileSync(dirname(path()), 'in the way')
  packEverything(desk)
  await expect.poll(() => everythingStands(desk).failed).toMatch(/everything\.zip|leaving/)
  expect(everythingStands(desk)).toMatchObject({ working: null, ready: null })
})
