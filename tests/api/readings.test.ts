import { beforeEach, expect, test } from 'vitest'
import { type Api, firstRun, makeApi } from './makeApi.ts'

let api: Api
let bayId: string

beforeEach(async () => {
  api = await makeApi('2026-04-15T07:40:00Z')
  await api.mutate('shop.setUp', firstRun)
  bayId = (await api.query('bays.list')).data[1].id
})

test('a typed reading that cannot be is refused beside its field', async () => {
  const { nowAt } = (await api.query('system.now')).data
  const good = { bayId, at: nowAt, airC: 18, panelC: null, humidityPercent: 50 }
  expect((await api.mutate('readings.add', good)).status).toBe(200)
  const bad = await api.mutate('readings.add', { ...good, at: nowAt - 5, humidityPercent: 140 })
  expect(bad).toMatchObject({
    status: 400,
    fault: { reason: 'humidity-impossible', field: 'humidityPercent' },
  })
  const shape = await api.mutate('readings.add', { ...good, airC: 'warm' })
  expect(shape).toMatchObject({ status: 400, fault: { field: 'airC' } })
  expect((await api.query('readings.list', { bayId, fromAt: nowAt - 60, toAt: nowAt })).data).toHaveLength(1)
})

test('a file of more than a form may send is taken in; other procedures keep their limit', async () => {
  const minute = (i: number) => new Date(Date.UTC(2026, 2, 1) + i * 60_000).toISOString()
  const lines = Array.from(
    { length: 60_000 },
    (_, i) => `${minute(i)},18.${i % 10},4${i % 10},north wall, plain row`,
  )
  const text = `time,air,humidity,place,note\n${lines.join('\n')}`
  expect(text.length).toBeGreaterThan(2 * 1024 * 1024)
  const mapping = { time: 'time', air: 'air', panel: null, humidity: 'humidity', dewPoint: null }
  const input = { bayId, text, mapping, dateOrder: 'ymd', unit: 'C' }
  expect((await api.mutate('readings.preview', { text })).data).toMatchObject({ rows: 60_000 })
  expect((await api.mutate('readings.import', input)).data).toMatchObject({ added: 60_000, refused: [] })
  const note = 'x'.repeat(2 * 1024 * 1024)
  await expect(api.mutate('customers.save', { name: 'Ines Vale', note })).rejects.toThrow()
})

test('a column the file has not is refused by its field', async () => {
  const mapping = { time: 'time', air: 'warmth', panel: null, humidity: null, dewPoint: null }
  const text = 'time,air\n2026-04-15 07:00,18\n'
  const answer = await api.mutate('readings.import', { bayId, text, mapping, dateOrder: 'ymd', unit: 'C' })
  expect(answer).toMatchObject({ status: 400, fault: { reason: 'no-column', field: 'mapping.air' } })
})

test('a record of a job that is not there is missing, not a fault', async () => {
  for (const [path, input] of [
    ['applied.get', { jobId: 'none' }],
    ['cure.job', { id: 'none' }],
  ] as const)
    expect(await api.query(path, input)).toMatchObject({ status: 404, fault: { reason: 'missing' } })
})
