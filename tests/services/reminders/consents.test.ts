import { beforeEach, expect, it } from 'vitest'
import { saveCustomer } from '../../../main/services/records/customers.ts'
import {
  giveConsent,
  listConsents,
  saveReach,
  withdrawConsent,
} from '../../../main/services/reminders/consents.ts'
import { makeDesk, type TestDesk } from '../makeDesk.ts'
import { testShop } from '../testShop.ts'

let desk: TestDesk
let customerId: string
beforeEach(async () => {
  desk = await makeDesk('2026-04-15T14:00:00Z')
  await testShop(desk)
  const made = await saveCustomer(desk, {
    name: 'Sanna Reed',
    phone: '',
    email: 'sanna@example.com',
    note: '',
  })
  customerId = made.id
})

const said = { source: 'intake form', wording: 'You may write.' }
const state = async (channel: string) =>
  (await listConsents(desk, { customerId })).states.find(each => each.channel === channel)!

it('is none until it was given, and ends with the word of the owner', async () => {
  expect(await state('email')).toMatchObject({
    address: 'sanna@example.com',
    state: { given: false },
    words: 'has not agreed',
  })
  expect(await state('call')).toMatchObject({ address: null, state: null, words: 'no address on file' })
  await giveConsent(desk, { ...said, customerId, channel: 'email' })
  expect(await state('email')).toMatchObject({
    state: { given: true },
    words: 'agreed since Wed 15 April 2026, 10:00 (intake form)',
  })
  desk.setNow('2026-04-16T14:00:00Z')
  expect(await withdrawConsent(desk, { ...said, customerId, channel: 'all' })).toEqual({ stopped: 0 })
  expect(await state('email')).toMatchObject({
    state: { given: false },
    words: 'withdrawn on Thu 16 April 2026, 10:00',
  })
  expect(
    (await listConsents(desk, { customerId })).ledger.map(line => [line.what, line.channel, line.who]),
  ).toEqual([
    ['withdrawn', 'all', 'front desk'],
    ['given', 'email', 'front desk'],
  ])
})

it('withdrawn of an address stops everybody who has it', async () => {
  const other = await saveCustomer(desk, {
    name: 'Joss Reed',
    phone: '',
    email: 'Sanna@Example.com',
    note: '',
  })
  await giveConsent(desk, { ...said, customerId, channel: 'email' })
  desk.setNow('2026-04-16T14:00:00Z')
  await withdrawConsent(desk, {
    ...said,
    customerId: other.id,
    channel: 'email',
    address: ' SANNA@example.com ',
  })
  expect(await state('email')).toMatchObject({
    state: { given: false },
    words: expect.stringContaining('somebody at this address withdrew'),
  })
})

it.each([
  ['at', { at: 40_000_000 }],
  ['customerId', { customerId: 'none' }],
  ['source', { source: ' ' }],
  ['wording', { wording: '' }],
])('is refused by its %s', async (field, change) => {
  await expect(
    (async () => giveConsent(desk, { ...said, customerId, channel: 'email', ...change }))(),
  ).rejects.toMatchObject({ field })
  expect(await desk.store.read.consent.count()).toBe(0)
})

it('keeps how an owner is written to on the version that was seen', async () => {
  const reach = { customerId, language: 'DE', zone: 'Europe/Berlin', postal: '3 Osier Row\nHarrowmere' }
  expect(await saveReach(desk, { ...reach, version: 0 })).toEqual({ version: 1 })
  expect((await listConsents(desk, { customerId })).reach).toEqual({
    language: 'de',
    zone: 'Europe/Berlin',
    postal: '3 Osier Row\nHarrowmere',
    country: null,
    version: 1,
  })
  expect(await state('letter')).toMatchObject({ address: '3 Osier Row, Harrowmere' })
  await expect(saveReach(desk, { ...reach, version: 0 })).rejects.toMatchObject({ code: 'stale' })
  await saveReach(desk, { customerId, language: ' ', zone: null, postal: '', version: 1 })
  expect((await listConsents(desk, { customerId })).reach).toEqual({
    language: null,
    zone: null,
    postal: '',
    country: null,
    version: 2,
  })
  await expect(
    (async () => saveReach(desk, { ...reach, zone: 'Mars/Base', version: 2 }))(),
  ).rejects.toMatchObject({
    field: 'zone',
  })
})
