import { Hono } from 'hono'
import { beforeEach, expect, test } from 'vitest'
import { sensorDoor, sensorPath } from '../../main/api/sensor.ts'
import { type Api, firstRun, makeApi } from './makeApi.ts'

let api: Api
let bayId: string
let token: string
let door: Hono
let nowMs = 0

// Wednesday 15 April 2026, 07:40 in UTC.
beforeEach(async () => {
  api = await makeApi('2026-04-15T07:40:00Z')
  await api.mutate('shop.setUp', firstRun)
  bayId = (await api.query('bays.list')).data[1].id
  token = (await api.mutate('sensors.createToken', { bayId, name: 'north wall' })).data.token
  nowMs = 0
  door = new Hono().route(
    '/',
    sensorDoor(api.desk, () => nowMs),
  )
})

async function post(body: unknown, authorization: string | null = `Bearer ${token}`) {
  const answer = await door.request(sensorPath, {
    method: 'POST',
    headers: { 'content-type': 'application/json', ...(authorization === null ? {} : { authorization }) },
    body: typeof body === 'string' ? body : JSON.stringify(body),
  })
  return { status: answer.status, body: await answer.json() }
}

const one = (reading: object) => ({ readings: [{ time: '2026-04-15T07:35:00Z', air: 17.5, ...reading }] })

test('A reading with its token is kept for the sensor’s bay, and posted again it is known', async () => {
  expect(await post(one({ humidity: 46, panel: 16.9 }))).toEqual({
    status: 200,
    body: { kept: 1, known: 0, refused: [] },
  })
  expect((await post(one({ humidity: 46, panel: 16.9 }))).body).toEqual({ kept: 0, known: 1, refused: [] })
  const now = (await api.query('readings.now')).data
  const bay = now.bays.find((each: { bayId: string }) => each.bayId === bayId)
  expect(bay.last).toMatchObject({ source: 'sensor', airC: 17.5, panelC: 16.9, humidityPercent: 46 })
  expect(bay.sensors).toMatchObject([{ name: 'north wall', lastAt: bay.last.at }])
})

test('What cannot be is answered row by row, and the rest is kept', async () => {
  const { status, body } = await post({
    unit: 'F',
    readings: [
      { time: '2026-04-15T07:30:00Z', air: 68 },
      { time: '2026-04-15T07:31:00Z', air: -112 },
      { time: '2026-04-15T07:32:00Z', air: 68, humidity: 140 },
      { time: '2026-04-15T09:00:00Z', air: 68 },
      { time: 'noon', air: 68 },
    ],
  })
  expect(status).toBe(200)
  expect(body.kept).toBe(1)
  expect(body.refused.map(({ row, code }: { row: number; code: string }) => [row, code])).toEqual([
    [2, 'temperature-impossible'],
    [3, 'humidity-impossible'],
    [4, 'time-future'],
    [5, 'time-unread'],
  ])
})

test('Without its token nobody posts, and a revoked one counts no more', async () => {
  for (const wrong of [null, 'Bearer', `Basic ${token}`, `Bearer ${token}x`, `Bearer ${'a'.repeat(43)}`])
    expect((await post(one({}), wrong)).status, String(wrong)).toBe(401)
  const now = (await api.query('readings.now')).data
  const sensor = now.bays.flatMap((bay: { sensors: { id: string }[] }) => bay.sensors)[0]
  await api.mutate('sensors.revoke', { id: sensor.id })
  expect((await post(one({}))).status).toBe(401)
  expect(await api.desk.store.read.reading.count()).toBe(0)
})

test('The token is kept nowhere: only its digest is', async () => {
  const rows = await api.desk.store.read.sensorToken.findMany()
  const lines = await api.desk.store.read.auditLine.findMany()
  expect(JSON.stringify([rows, lines])).not.toContain(token)
  expect(token.length).toBeGreaterThanOrEqual(43)
})

test('A body that is none is refused by its field; one too large is not read', async () => {
  expect((await post('{')).status).toBe(400)
  expect(await post({ readings: [] })).toMatchObject({ status: 400 })
  expect((await post({ readings: [{ time: '2026-04-15T07:35:00Z' }] })).body.error).toContain(
    'readings.0.air',
  )
  expect((await post({ readings: Array.from({ length: 501 }, () => one({}).readings[0]) })).status).toBe(400)
  expect((await post(JSON.stringify({ pad: 'x'.repeat(70_000) }))).status).toBe(413)
})

test('A sensor that runs wild, and strangers who guess, are slowed down; a minute later they may again', async () => {
  for (let i = 0; i < 60; i++) expect((await post(one({}))).status).toBe(200)
  expect((await post(one({}))).status).toBe(429)
  nowMs += 60_000
  expect((await post(one({}))).status).toBe(200)
  for (let i = 0; i < 30; i++) expect((await post(one({}), 'Bearer none')).status).toBe(401)
  expect((await post(one({}), 'Bearer none')).status).toBe(429)
  // Guessers do not shut out a sensor that has its token.
  expect((await post(one({}))).status).toBe(200)
})

test('The address gives nothing out, and takes nothing but posts', async () => {
  expect((await door.request(sensorPath)).status).toBe(404)
  expect((await door.request(sensorPath, { method: 'DELETE' })).status).toBe(404)
})
