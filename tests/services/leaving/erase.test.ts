import { readFileSync } from 'node:fs'
import Database from 'better-sqlite3'
import fc from 'fast-check'
import { beforeEach, describe, expect, it } from 'vitest'
import { getApplied, signRecord } from '../../../main/services/applied/record.ts'
import { cancelJob, handOver } from '../../../main/services/job/jobActs.ts'
import { erasePerson } from '../../../main/services/leaving/erase.ts'
import { personFile } from '../../../main/services/leaving/person.ts'
import { archiveCustomer, getCustomer, saveCustomer } from '../../../main/services/records/customers.ts'
import { saveVehicle } from '../../../main/services/records/vehicles.ts'
import { importBounce } from '../../../main/services/reminders/bounces.ts'
import { giveConsent } from '../../../main/services/reminders/consents.ts'
import { prepareBatch } from '../../../main/services/reminders/prepare.ts'
import { bookJob } from '../bookJob.ts'
import { does, job, layeredCar, setWall } from '../cure/coatedCar.ts'
import { makeDesk, type TestDesk } from '../makeDesk.ts'
import { duePlan } from '../reminders/reminderDesk.ts'
import { type TestShop, testShop } from '../testShop.ts'
import { columnsWith, eddaOutsideIds, plant } from './rawText.ts'
import { readList, unzip } from './unzip.ts'

let desk: TestDesk
let shop: TestShop
beforeEach(async () => {
  desk = await makeDesk('2026-04-15T12:00:00Z')
  shop = await testShop(desk)
})

const file = () => desk.store.source.file
const edda = {
  name: 'Edda Marsh',
  phone: '(212) 555-0177',
  email: 'edda@example.com',
  note: 'gate code 4411',
}
const traces = [eddaOutsideIds, /marsh(?!all)/i, /212\W*555\W*0177/, /qlm\W*311/i, /oakby/i]

/** Takes the car's first owner for Edda, whose name and number were others before. */
async function becomeEdda(vehicle = 0): Promise<string> {
  const vehicleId = shop.vehicles[vehicle]!
  const row = await desk.store.read.vehicle.findUniqueOrThrow({ where: { id: vehicleId } })
  const { customerId } = row
  const before = { ...edda, name: 'Edda Oakby', phone: '(212) 555-0178' }
  const { version } = await saveCustomer(desk, { id: customerId, version: 1, ...before })
  await saveCustomer(desk, { ...edda, id: customerId, version })
  await saveVehicle(desk, {
    ...row,
    id: vehicleId,
    sizeClass: 'medium',
    finish: 'gloss',
    paint: 'unknown',
    panels: [],
    plate: 'QLM 311',
    note: 'Edda drives it',
  })
  return customerId
}

const erase = async (id: string, accepted = true) => {
  const { version } = await desk.store.read.customer.findUniqueOrThrow({ where: { id } })
  return erasePerson(desk, { id, version, accepted })
}

/** A coated car, its record signed, a letter written and sent back, and others who speak of her. */
async function eddasYears(): Promise<{ customerId: string; jobId: string }> {
  const customerId = await becomeEdda()
  const jobId = await layeredCar(desk, shop)
  for (const position of [0, 1, 2, 4]) await does(desk, jobId, position, { reason: 'Edda waits for it' })
  setWall(desk, '16T09:00')
  await handOver(desk, { id: jobId, version: (await job(desk, jobId)).version, reason: 'Edda Marsh insists' })
  const { draft } = await getApplied(desk, { jobId })
  const layers = draft.layers.map(layer => ({ ...layer, lot: 'batch 7K-114' }))
  await signRecord(desk, { jobId, version: 0, signedBy: 'Jo', draft: { layers, note: 'for Edda' } })
  await giveConsent(desk, { customerId, channel: 'email', source: 'Edda said so', wording: 'Write to me' })
  await duePlan(desk, shop.vehicles[0]!, '2026-04-28')
  await prepareBatch(desk)
  await saveCustomer(desk, {
    name: 'Hanno Krell',
    note: 'brother of EDDA  MARSH, call +1 212-555-0177, not Edda Marshall',
  })
  return { customerId, jobId }
}

describe('an erasure', () => {
  it('leaves name, number, address, plate and notes in no column of no table, and in no byte of the file', async () => {
    const { customerId, jobId } = await eddasYears()
    const report = 'Final-Recipient: rfc822; edda@example.com\nAction: failed\nStatus: 5.1.1\n'
    await importBounce(desk, { text: `Content-Type: message/delivery-status\n\n${report}` }).catch(() => {})
    const before = columnsWith(file(), traces)
    expect(before.length).toBeGreaterThan(12)
    for (const column of [
      'AuditLine.detail',
      'AppliedEntry.content',
      'Message.body',
      'Consent.source',
      'Customer.note',
    ])
      expect(before).toContain(column)
    const booked = await desk.store.read.job.findUniqueOrThrow({
      where: { id: jobId },
      include: { steps: true, treatments: true },
    })
    const filed = { id: true, at: true, who: true, act: true, entity: true } as const
    const lines = await desk.store.read.auditLine.findMany({ select: filed })
    await erase(customerId)
    expect(columnsWith(file(), traces)).toEqual([])
    // The books stay as they were, and the history has lost no line.
    expect(
      await desk.store.read.job.findUniqueOrThrow({
        where: { id: jobId },
        include: { steps: true, treatments: true },
      }),
    ).toEqual(booked)
    const now = await desk.store.read.auditLine.findMany({ select: filed })
    expect(now).toEqual(expect.arrayContaining(lines))
    const { entries } = await getApplied(desk, { jobId })
    expect(entries[0]).toMatchObject({
      signedBy: 'Jo',
      content: { facts: { customerName: 'erased person' }, draft: { layers: [{ lot: 'batch 7K-114' }, {}] } },
    })
    expect(entries[0]!.content.facts.overrides.at(-1)).toBe(
      'Handed over all the same: erased person insists.',
    )
    const other = await desk.store.read.customer.findFirstOrThrow({ where: { name: 'Hanno Krell' } })
    expect(other.note).toBe('brother of erased person, call erased person, not Edda Marshall')
    expect(await getCustomer(desk, { id: customerId })).toMatchObject({
      name: 'erased person',
      phone: null,
      email: null,
    })
    const written = await desk.store.read.auditLine.findFirstOrThrow({ where: { act: 'erased' } })
    expect(written).toMatchObject({
      who: 'front desk',
      entityId: customerId,
      detail: { lines: expect.any(Number) },
    })
    // Nor does a page that was freed keep it, once the log is folded in.
    const database = new Database(file())
    database.pragma('wal_checkpoint(truncate)')
    database.close()
    const bytes = readFileSync(file()).toString('latin1')
    for (const trace of [/Edda Marsh(?!all)/, /edda@example/, /2125550177/]) expect(bytes).not.toMatch(trace)
  })

  it('finds what was written into any text of any table', async () => {
    const word = fc.string({ unit: fc.constantFrom(...'abcäöéxYZ'), minLength: 4, maxLength: 9 })
    const { customerId } = await eddasYears()
    const planted = plant(file(), ' seen: edda  MARSH (212) 555 0177 EDDA@example.com qlm-311.')
    expect(planted.length).toBeGreaterThan(60)
    expect(columnsWith(file(), traces)).toEqual(expect.arrayContaining(planted))
    await erase(customerId)
    expect(columnsWith(file(), traces)).toEqual([])
    // Any name at all, with whatever stands in a pattern for something else.
    await fc.assert(
      fc.asyncProperty(
        word,
        word,
        fc.constantFrom("'", '.*', '(', '"', '\\', '%', '_'),
        async (first, last, odd) => {
          const name = `${first} ${odd}${last}`
          const { id } = await saveCustomer(desk, {
            name,
            email: `${first.length}x@example.com`,
            accepted: true,
          })
          await saveCustomer(desk, {
            name: 'Somebody Else',
            note: `knows ${name.toUpperCase()} well`,
            accepted: true,
          })
          await erase(id)
          const folded = name.toUpperCase()
          const held = await desk.store.read.customer.findMany({ where: { archivedAt: null } })
          expect(held.filter(({ note }) => note.toUpperCase().includes(folded))).toEqual([])
          const all = await desk.store.read.auditLine.findMany()
          expect(
            all.filter(({ detail }) => JSON.stringify(detail).includes(JSON.stringify(name).slice(1, -1))),
          ).toEqual([])
        },
      ),
      { numRuns: 8 },
    )
  })

  it('is asked about first, with what it touches, and changes nothing until then', async () => {
    const { customerId } = await eddasYears()
    const before = columnsWith(file(), traces)
    await expect(erase(customerId, false)).rejects.toMatchObject({
      code: 'erases',
      message: expect.stringMatching(
        /^Erase Edda Marsh\? .*\n.*\n1 car loses its plate and VIN .*\n1 visit stays .*\n1 message loses .*\n.*\nBackups made until now /,
      ),
    })
    expect(columnsWith(file(), traces)).toEqual(before)
  })

  it('is refused while a car is booked, on a stale version, of nobody, and a second time', async () => {
    const customerId = await becomeEdda()
    const { id, version } = await bookJob(desk, shop, { treatments: ['wash'] })
    await expect(erase(customerId)).rejects.toMatchObject({
      code: 'customer-booked',
      message: expect.stringContaining('QLM 311'),
    })
    await cancelJob(desk, { id, version, reason: 'sold' })
    await expect(erasePerson(desk, { id: customerId, version: 1, accepted: true })).rejects.toMatchObject({
      code: 'stale',
    })
    expect(await desk.store.read.erasure.count()).toBe(0)
    await expect(erasePerson(desk, { id: 'nobody', version: 1, accepted: true })).rejects.toMatchObject({
      code: 'missing',
    })
    await erase(customerId)
    await expect(erase(customerId)).rejects.toMatchObject({ code: 'erased-already' })
  })

  it('withdraws what was to be sent, and lets the places it proposed go', async () => {
    const { customerId, jobId } = await eddasYears()
    expect(await desk.store.read.job.count({ where: { status: 'held' } })).toBeGreaterThan(0)
    await erase(customerId)
    expect(await desk.store.read.job.count({ where: { status: 'held' } })).toBe(0)
    expect((await job(desk, jobId)).status).toBe('handedOver')
    expect(await desk.store.read.message.findMany()).toMatchObject([
      { state: 'withdrawn', body: 'erased person' },
    ])
  })

  it('reaches one who was archived', async () => {
    const customerId = await becomeEdda()
    await archiveCustomer(desk, { id: customerId, version: 3 })
    const putAwayAt = desk.now()
    desk.setNow('2026-04-16T12:00:00Z')
    await erase(customerId)
    expect(columnsWith(file(), traces)).toEqual([])
    // Put away then, and still since then.
    expect(await desk.store.read.customer.findUniqueOrThrow({ where: { id: customerId } })).toMatchObject({
      archivedAt: putAwayAt,
    })
  })

  it('puts the person and their cars away', async () => {
    const customerId = await becomeEdda()
    await erase(customerId)
    const { archivedAt, vehicles } = await desk.store.read.customer.findUniqueOrThrow({
      where: { id: customerId },
      include: { vehicles: true },
    })
    expect([archivedAt, ...vehicles.map(car => car.archivedAt)]).toEqual([desk.now(), desk.now()])
  })

  it('leaves others who share a name, a number or a word of it', async () => {
    const customerId = await becomeEdda()
    await saveCustomer(desk, { name: 'Edda Marsh', note: 'another Edda Marsh', accepted: true })
    await saveCustomer(desk, { name: 'Ole Marsh', phone: edda.phone, accepted: true })
    await erase(customerId)
    expect(
      await desk.store.read.customer.findMany({
        where: { archivedAt: null, name: { contains: 'Marsh' } },
        orderBy: { name: 'asc' },
      }),
    ).toMatchObject([
      { name: 'Edda Marsh', note: 'another Edda Marsh' },
      { name: 'Ole Marsh', phone: '+12125550177' },
    ])
  })

  it('does not take a name of one word for a word of the trade', async () => {
    const { id, version } = await saveCustomer(desk, { name: 'Wash' })
    const jobId = await layeredCar(desk, shop)
    await desk.store.transact({ who: 'test', at: 1 }, tx =>
      tx.job.update({ where: { id: jobId }, data: { customerId: id } }),
    )
    const steps = (await job(desk, jobId)).steps.map(step => step.name)
    await desk.store.transact({ who: 'test', at: 1 }, tx =>
      tx.job.update({ where: { id: jobId }, data: { status: 'cancelled' } }),
    )
    await erasePerson(desk, { id, version, accepted: true })
    expect((await job(desk, jobId)).steps.map(step => step.name)).toEqual(steps)
  })
})

describe('everything about one person', () => {
  it('holds their rows, those of their car and visits, and nobody else’s', async () => {
    const { customerId, jobId } = await eddasYears()
    const { name, type, keep, bytes } = await personFile(desk, { customerId })
    // To be kept, never opened in the window.
    expect({ name, type, keep }).toEqual({ name: 'Edda Marsh.zip', type: 'application/zip', keep: true })
    const files = unzip(Buffer.from(bytes as Uint8Array))
    const json = JSON.parse(files.get('shop.json')!.toString())
    expect(json.tables.customers).toMatchObject([{ id: customerId, name: 'Edda Marsh' }])
    expect(json.tables.jobs[0]).toMatchObject({ id: jobId })
    for (const table of ['vehicles', 'consents', 'messages', 'applied-entries', 'layers', 'upkeep-plans'])
      expect(json.tables[table].length, table).toBeGreaterThan(0)
    expect(readList(files, 'job-steps')).toHaveLength(json.tables['job-steps'].length)
    expect([...files.keys()].filter(name => name.startsWith('files/'))).toEqual([])
    const all = [...files.values()].join()
    expect(all).not.toContain('Hanno')
    for (const table of ['products', 'suppliers', 'crew-members']) expect(json.tables[table]).toBeUndefined()
    await expect(personFile(desk, { customerId: 'nobody' })).rejects.toMatchObject({ code: 'missing' })
  })
})
