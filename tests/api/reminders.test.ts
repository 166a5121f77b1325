import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { duePlan } from '../services/reminders/reminderDesk.ts'
import { type TestShop, testShop } from '../services/testShop.ts'
import { agree } from '../services/upkeep/coatedCar.ts'
import { type Api, makeApi } from './makeApi.ts'

let api: Api
let shop: TestShop
let planId: string
let customerId: string
beforeAll(async () => {
  api = await makeApi('2026-04-15T14:00:00Z')
  shop = await testShop(api.desk)
  customerId = await agree(api.desk, shop.vehicles[0]!, ['email', 'letter'])
  planId = await duePlan(api.desk, shop.vehicles[0]!)
})
afterAll(() => api.close())

describe('upkeep, as a browser calls it', () => {
  it('is listed, written about, edited and refused', async () => {
    const due = await api.query('upkeep.due', { fromDate: '2026-04-01', toDate: '2026-05-31' })
    expect(due.data.visits).toMatchObject([{ planId, ruleOn: '2026-04-28', channels: ['email', 'letter'] }])
    const one = await api.query('upkeep.visit', { planId, ruleOn: '2026-04-28' })
    expect(one.data).toEqual(due.data.visits[0])
    expect((await api.query('reminders.batch')).data).toMatchObject({
      waiting: 1,
      stopped: expect.stringContaining('settings'),
    })
    const { data } = await api.mutate('reminders.write', { planId, ruleOn: '2026-04-28', channel: 'letter' })
    const again = await api.mutate('reminders.write', { planId, ruleOn: '2026-04-28', channel: 'letter' })
    expect(again).toMatchObject({ status: 409, fault: { reason: 'stale' } })
    const batch = await api.query('reminders.batch')
    expect(batch.data.messages).toMatchObject([{ id: data.id, channel: 'letter', state: 'draft' }])
    const { version } = batch.data.messages[0]
    const edited = await api.mutate('reminders.edit', {
      id: data.id,
      version,
      subject: 'Soon',
      body: '{{plate}}',
    })
    expect(edited.data).toMatchObject({ subject: 'Soon', body: 'KFR 204' })
    expect(await api.mutate('reminders.approve', { id: data.id, version })).toMatchObject({ status: 409 })
    await api.mutate('reminders.refuse', { id: data.id, version: edited.data.version })
    expect((await api.query('reminders.batch')).data.messages).toMatchObject([{ state: 'withdrawn' }])
  })

  it('previews a template with a real car, and says which times only stand in', async () => {
    const list = await api.query('templates.list')
    expect(list.data.lawNote).toContain('local law')
    const { data } = await api.query('templates.preview', {
      templateId: 'reminder-email',
      vehicleId: shop.vehicles[0],
    })
    expect(data).toMatchObject({
      examples: ['slotOne', 'slotTwo', 'heldUntil'],
      unfilled: ['shopPhone', 'shopAddress'],
    })
    expect(data.body).toContain('Dear Ines Vale')
    const german = await api.query('templates.preview', {
      templateId: 'reminder-email',
      vehicleId: shop.vehicles[0],
      language: 'de-CH',
    })
    expect(german.data.language).toBe('de')
  })

  it('keeps its rules, one edit at a time', async () => {
    const { data } = await api.query('reminders.settings')
    expect(data).toMatchObject({ automatic: false, version: 0 })
    expect((await api.mutate('reminders.saveSettings', { ...data, dailyLimit: 5 })).data).toMatchObject({
      dailyLimit: 5,
      version: 1,
    })
    expect(await api.mutate('reminders.saveSettings', { ...data, version: 2 })).toMatchObject({ status: 409 })
  })

  it.each([
    ['upkeep.due', 'query', { fromDate: 'soon', toDate: '2026-05-01' }, 'fromDate'],
    ['upkeep.away', 'mutate', { vehicleId: 'car', from: '2026-05-02', to: '2026-05-01' }, 'away.0.to'],
    ['upkeep.sold', 'mutate', { vehicleId: 'nobody' }, 'vehicleId'],
    ['upkeep.undo', 'mutate', { actId: 'nothing' }, 'actId'],
    [
      'upkeep.inspect',
      'mutate',
      { layerId: 'none', panels: [{ panel: 'roof', before: 'weak', after: 'strong' }] },
      'layerId',
    ],
    [
      'upkeep.exposure.save',
      'mutate',
      { vehicleId: 'car', choices: { kept: 'boat' }, version: 0 },
      'exposure.kept',
    ],
    [
      'consents.give',
      'mutate',
      { customerId: 'CUSTOMER', channel: 'email', source: '', wording: 'yes' },
      'source',
    ],
    [
      'consents.withdraw',
      'mutate',
      { customerId: 'x', channel: 'all', source: 'a', wording: '' },
      'customerId',
    ],
    ['reminders.book', 'mutate', { messageId: 'none', slot: 0 }, 'slot'],
    ['reminders.bounce', 'mutate', { text: 'hello' }, 'text'],
    ['templates.preview', 'query', { templateId: 'none', vehicleId: 'none' }, 'vehicleId'],
    ['feeds.create', 'mutate', { name: ' ', details: false }, 'name'],
    ['feeds.revoke', 'mutate', { id: 'none' }, 'id'],
  ] as const)('%s (%s) refuses %j by its field', async (path, how, input, field) => {
    const sent = 'customerId' in input && input.customerId === 'CUSTOMER' ? { ...input, customerId } : input
    const answer = await api[how](path, sent)
    expect([400, 404]).toContain(answer.status)
    expect(answer.fault?.field).toBe(field)
    expect(answer.message).not.toBe('')
  })

  it.each([
    [{ level: 1.5 }, 'level'],
    [{ toMin: 100 }, 'toMin'],
    [{ maxTries: 0 }, 'maxTries'],
    [{ holdDays: 2.5 }, 'holdDays'],
    [{ language: 'no language!' }, 'language'],
    [{ stopAddress: 'nobody' }, 'stopAddress'],
  ])('the rules refuse %o by its field', async (change, field) => {
    const { data } = await api.query('reminders.settings')
    expect((await api.mutate('reminders.saveSettings', { ...data, ...change })).fault).toMatchObject({
      field,
    })
  })
})
