import { dirname } from 'node:path'
import { beforeEach, expect, it } from 'vitest'
import { fillDemo } from '../../../main/services/demo/index.ts'
import { keptFaults, noteFault } from '../../../main/store/faultLog.ts'
import { type Api, makeApi } from '../../api/makeApi.ts'

let api: Api
beforeEach(async () => {
  api = await makeApi()
})

const shown = async (): Promise<string> => (await api.query('system.diagnostics')).data.text

it('tells versions, counts, timings and errors of a shop in full swing, and nothing of whom it serves', async () => {
  await fillDemo(api.desk)
  const { read, source } = api.desk.store
  const customer = await read.customer.findFirstOrThrow()
  noteFault(dirname(source.file), api.desk.now(), new Error(`Not for ${customer.name}, +1 202 555 0110`))
  await api.query('customers.find', { text: customer.name })
  const text = await shown()
  expect(text).toMatch(/^Lustrum\n {2}version \d+\.\d+\.\d+\n {2}made 2026-04-15T07:40:00Z\n/)
  expect(text).toMatch(/\n {2}SQLite \d+\.\d+\.\d+\n {2}schema \d{14}_\w+ \(\d+ migrations\)\n/)
  expect(text).toContain(`  Customer ${await read.customer.count()}\n`)
  expect(text).toMatch(/\n {2}customers\.find 1 \d+ \d+\n/)
  expect(text).toMatch(/\n {2}2026-04-15T07:40:00Z \| Error \| \S*diagnostics\.test\.ts:\d+:\d+/)
  const typed = [
    ...(await read.customer.findMany()).flatMap(({ name, phone, email }) => [name, phone, email]),
    ...(await read.vehicle.findMany()).flatMap(({ plate, vin }) => [plate, vin]),
    ...(await read.crewMember.findMany()).map(({ name }) => name),
    ...(await read.supplier.findMany()).map(({ name }) => name),
    (await read.shop.findFirstOrThrow()).name,
    '555 0110',
    dirname(source.file),
  ]
  // A plate such as "A 1" would be found by chance.
  for (const words of typed.filter(words => (words ?? '').length > 4)) expect(text).not.toContain(words)
})

it('saves what was shown, though more has happened since', async () => {
  const text = await shown()
  await api.query('shop.get')
  const file = await api.get('/documents/diagnostics.txt')
  expect(file.headers.get('content-disposition')).toMatch(/^attachment; filename="lustrum-diagnostics\.txt"/)
  expect(await file.text()).toBe(text)
  expect(await shown()).not.toBe(text)
})

it('says so where nothing has gone wrong', async () => {
  expect(await shown()).toContain('Last errors (UTC)\n  none\n')
  expect(keptFaults(dirname(api.desk.store.source.file), 5)).toEqual([])
})
