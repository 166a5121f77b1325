import { beforeEach, describe, expect, test } from 'vitest'
import { type Api, firstRun, makeApi, weekdays } from './makeApi.ts'

let api: Api
beforeEach(async () => {
  api = await makeApi()
})

async function rowsKept() {
  const { read } = api.desk.store
  return [
    await read.shop.count(),
    await read.bay.count(),
    await read.crewMember.count(),
    await read.treatment.count(),
    await read.auditLine.count(),
  ]
}

test('a database without a shop says so, and the first run makes one with its bays, crew and starters', async () => {
  expect((await api.query('shop.get')).data).toBeNull()
  const made = await api.mutate('shop.setUp', firstRun)
  expect(made).toMatchObject({ status: 200, data: { name: 'Ashdown Paint Care', gridMin: 15, version: 1 } })
  expect((await api.query('shop.get')).data).toEqual(made.data)
  expect((await api.query('bays.list')).data.map((bay: { name: string }) => bay.name)).toEqual([
    'Bay 1',
    'Bay 2',
  ])
  expect((await api.query('crew.list')).data).toMatchObject([{ name: 'Mika', weekly: null, absences: [] }])
  const treatments = (await api.query('treatments.list')).data
  const coat = treatments.find((each: { name: string }) => each.name === 'Coating, one layer')
  const products = (await api.query('products.list')).data
  const coating = products.find((each: { kind: string }) => each.kind === 'coating')
  expect(coat.steps[2]).toMatchObject({ stage: 'coat', productId: coating.id })
  expect(coating.usedIn).toContainEqual({ id: coat.id, name: coat.name })
})

test('without starters a shop begins with no treatment and no product', async () => {
  await api.mutate('shop.setUp', { ...firstRun, starters: false })
  expect((await api.query('treatments.list')).data).toEqual([])
  expect((await api.query('products.list')).data).toEqual([])
})

test('a second first run is refused: the folder belongs to one shop', async () => {
  await api.mutate('shop.setUp', firstRun)
  const again = await api.mutate('shop.setUp', { ...firstRun, name: 'Another' })
  expect(again).toMatchObject({ status: 400, fault: { reason: 'shop-there', field: 'shop' } })
  expect(again.message).toContain('Ashdown Paint Care')
})

test.each([
  ['no name', { name: '  ' }, 'name'],
  ['an unknown zone', { zone: 'Mars/Olympus' }, 'zone'],
  ['an unknown currency', { currency: 'USS' }, 'currency'],
  ['a metal for a currency', { currency: 'XAU' }, 'currency'],
  ['an unknown country', { country: 'QQ' }, 'country'],
  ['unknown units', { units: 'furlongs' }, 'units'],
  ['a week without an opening', { weekly: [] }, 'weekly'],
  ['closing before opening', { weekly: [{ weekday: 1, from: 600, to: 540 }] }, 'weekly.0.to'],
  [
    'overlapping openings',
    {
      weekly: [
        { weekday: 1, from: 480, to: 720 },
        { weekday: 1, from: 700, to: 900 },
      ],
    },
    'weekly.1.from',
  ],
  ['an eighth weekday', { weekly: [{ weekday: 8, from: 480, to: 720 }] }, 'weekly.0.weekday'],
  ['no bay', { bays: [] }, 'bays'],
  ['a bay good for nothing', { bays: [{ name: 'Bay 1', capabilities: [] }] }, 'bays.0.capabilities'],
  ['a made-up capability', { bays: [{ name: 'Bay 1', capabilities: ['fly'] }] }, 'bays.0.capabilities.0'],
  [
    'two bays of one name',
    {
      bays: [
        { name: 'Bay', capabilities: ['wet'] },
        { name: 'BAY ', capabilities: ['wet'] },
      ],
    },
    'bays.1.name',
  ],
  ['nobody to work', { crew: [] }, 'crew'],
  ['a nameless crew member', { crew: [{ name: '', skills: ['wash'] }] }, 'crew.0.name'],
  ['somebody without a skill', { crew: [{ name: 'Jo', skills: [] }] }, 'crew.0.skills'],
])('a first run with %s is refused with the field named, and nothing is kept', async (_, change, field) => {
  const answer = await api.mutate('shop.setUp', { ...firstRun, ...change })
  expect(answer.status).toBe(400)
  expect(answer.fault?.field).toBe(field)
  expect(answer.message.length).toBeGreaterThan(20)
  expect(await rowsKept()).toEqual([0, 0, 0, 0, 0])
})

describe('an update', () => {
  let shop: Record<string, unknown>
  beforeEach(async () => {
    const { demo: _, ...made } = (await api.mutate('shop.setUp', firstRun)).data
    shop = made
  })

  test('keeps what was written, reads the phone in the shop’s country, and leaves an audit line', async () => {
    const answer = await api.mutate('shop.update', { ...shop, name: 'Ashdown', phone: '(212) 555-0142' })
    expect(answer.data).toMatchObject({ name: 'Ashdown', phone: '+12125550142', version: 2 })
    const line = await api.desk.store.read.auditLine.findFirst({ orderBy: { id: 'desc' } })
    expect(line).toMatchObject({
      act: 'changed',
      entity: 'shop',
      detail: { name: ['Ashdown Paint Care', 'Ashdown'], phone: [null, '+12125550142'] },
    })
  })

  test('from a window that has not seen the last one is told so', async () => {
    await api.mutate('shop.update', { ...shop, name: 'First' })
    const second = await api.mutate('shop.update', { ...shop, name: 'Second' })
    expect(second).toMatchObject({ status: 409, fault: { reason: 'stale' } })
    expect((await api.query('shop.get')).data.name).toBe('First')
  })

  test('writes times and days as the shop chose, from the next answer on, and as usual there once it unchooses', async () => {
    const overlap = [
      { weekday: 1, from: 480, to: 1050 },
      { weekday: 1, from: 960, to: 1080 },
    ]
    const refusal = async () => (await api.mutate('shop.update', { ...shop, weekly: overlap })).message
    expect(await refusal()).toContain('4:00\u00a0pm to 6:00\u00a0pm overlaps 8:00\u00a0am to 5:30\u00a0pm')
    const chosen = { clockHours: 24, dateOrder: 'dayFirst', weekBegins: 1 }
    const { data } = await api.mutate('shop.update', { ...shop, ...chosen })
    expect(data).toMatchObject(chosen)
    expect(await refusal()).toContain('16:00 to 18:00 overlaps 08:00 to 17:30')
    // A form that does not show them leaves them.
    const { clockHours: _, dateOrder: __, weekBegins: ___, ...rest } = data
    expect((await api.mutate('shop.update', rest)).data).toMatchObject(chosen)
    await api.mutate('shop.update', { ...data, version: 3, clockHours: null })
    expect(await refusal()).toContain('4:00\u00a0pm')
  })

  test('begins no week on an eighth day, and knows no clock of 13 hours', async () => {
    for (const change of [{ weekBegins: 8 }, { clockHours: 13 }, { dateOrder: 'yearFirst' }])
      expect((await api.mutate('shop.update', { ...shop, ...change })).status).toBe(400)
  })

  test.each([
    ['a phone number that is none', { phone: 'call me' }, 'phone'],
    ['an address without its domain', { email: 'desk@' }, 'email'],
    ['a grid that does not divide the hour', { gridMin: 7 }, 'gridMin'],
    [
      'worn paint that takes less time than good',
      { conditionFactors: { good: 1, worn: 0.8, heavy: 1.5 } },
      'conditionFactors.worn',
    ],
    ['no opening left', { weekly: [] }, 'weekly'],
  ])('with %s is refused with the field named, and nothing is kept', async (_, change, field) => {
    const answer = await api.mutate('shop.update', { ...shop, ...change })
    expect(answer).toMatchObject({ status: 400, fault: { field } })
    expect((await api.query('shop.get')).data.version).toBe(1)
  })

  test('keeps the figures of prices when the currency loses its cents, as long as no job is priced in it', async () => {
    const [treatment] = (await api.query('treatments.list')).data
    await api.mutate('treatments.save', {
      ...treatment,
      prices: { small: 9_950, medium: 12_000, large: 14_000, xl: 16_000 },
    })
    expect((await api.mutate('shop.update', { ...shop, currency: 'JPY' })).status).toBe(200)
    const [after] = (await api.query('treatments.list')).data
    // ISO 4217: USD has two decimals, JPY none; 99.50 rounds half up.
    expect(after.prices).toEqual({ small: 100, medium: 120, large: 140, xl: 160 })
  })

  test('changes hours freely while nothing is booked', async () => {
    const answer = await api.mutate('shop.update', { ...shop, weekly: weekdays.slice(0, 2) })
    expect(answer.data.weekly).toEqual(weekdays.slice(0, 2))
  })
})
