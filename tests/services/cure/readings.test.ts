import { beforeEach, expect, test } from 'vitest'
import { importReadings, previewImport, takeBackImport } from '../../../main/services/cure/importReadings.ts'
import {
  addReading,
  conditionsNow,
  listReadings,
  setBayUsual,
  voidReading,
} from '../../../main/services/cure/readings.ts'
import { makeDesk, type TestDesk } from '../makeDesk.ts'
import { type TestShop, testShop } from '../testShop.ts'
import { wall } from './coatedCar.ts'

let desk: TestDesk
let shop: TestShop
let bayId: string

// Wednesday 15 April 2026, 12:00 in New York.
beforeEach(async () => {
  desk = await makeDesk('2026-04-15T16:00:00Z')
  shop = await testShop(desk)
  bayId = shop.bays['Bay 3']!
})

const file = [
  'Logger 7, by the north wall',
  '',
  'Date and time;Temperature (°C);Humidity (%RH)',
  '15/04/2026 08:00;18,5;46',
  '15/04/2026 08:05;18.4 °C;46 %',
  '15/04/2026 08:10;-80;46',
  '15/04/2026 08:15;18.2;140',
  '15/04/2026 08:05;17.9;47',
  'yesterday;18;45',
  '15/04/2026 08:20;;45',
  '15/04/2026 07:55;18.6;46',
  '',
].join('\n')

test('A file with bad rows keeps the rest, and says of each bad one which line it is and why', async () => {
  const preview = await previewImport(desk, { text: file })
  expect(preview).toMatchObject({
    columns: ['Date and time', 'Temperature (°C)', 'Humidity (%RH)'],
    rows: 8,
    mapping: { time: 'Date and time', air: 'Temperature (°C)', humidity: 'Humidity (%RH)', panel: null },
    dateOrder: 'dmy',
    unit: 'C',
    remembered: false,
  })
  const { mapping, dateOrder } = preview
  const unit = 'C'
  const report = await importReadings(desk, { bayId, text: file, mapping, dateOrder, unit })
  expect(report).toMatchObject({ rows: 8, added: 3, duplicates: 1, outOfOrder: 1 })
  expect(report.refused.map(({ row, code }) => [row, code])).toEqual([
    [6, 'temperature-impossible'],
    [7, 'humidity-impossible'],
    [9, 'time-unread'],
    [10, 'value-missing'],
  ])
  const kept = await listReadings(desk, { bayId, fromAt: wall('15T00:00'), toAt: wall('15T12:00') })
  expect(kept.map(({ at, airC, source }) => [at, airC, source])).toEqual([
    [wall('15T07:55'), 18.6, 'imported'],
    [wall('15T08:00'), 18.5, 'imported'],
    // Of two rows of one minute the colder one is kept.
    [wall('15T08:05'), 17.9, 'imported'],
  ])
})

test('A file taken twice adds nothing, and its columns are known again', async () => {
  const { mapping, dateOrder } = await previewImport(desk, { text: file })
  const unit = 'C'
  const chosen = { ...mapping, humidity: null }
  await importReadings(desk, { bayId, text: file, mapping: chosen, dateOrder, unit })
  const again = await previewImport(desk, { text: file })
  expect(again).toMatchObject({ mapping: chosen, remembered: true })
  const report = await importReadings(desk, { bayId, text: file, mapping: chosen, dateOrder, unit })
  expect(report).toMatchObject({ added: 0 })
  expect(await desk.store.read.reading.count()).toBe(4)
})

test('Fahrenheit is read as such, by the heading or by the choice', async () => {
  const text = 'Time,Temp (F)\n2026-04-15 08:00,68\n2026-04-15 08:05,-109\n'
  const { mapping, dateOrder, unit } = await previewImport(desk, { text })
  expect(unit).toBe('F')
  const report = await importReadings(desk, { bayId, text, mapping, dateOrder, unit: 'F' })
  expect(report.added).toBe(1)
  const [only] = await listReadings(desk, { bayId, fromAt: 0, toAt: wall('15T12:00') })
  // 68 °F is 20 °C, by the definition of the Fahrenheit scale.
  expect(only!.airC).toBeCloseTo(20, 9)
})

test('A file without a time anywhere is refused in words', async () => {
  await expect(previewImport(desk, { text: 'a,b\n1,2\n' })).rejects.toThrow('export it as CSV')
})

test('A typed reading goes through the same sieve, field by field', async () => {
  const good = { bayId, at: wall('15T11:50'), airC: 18, panelC: 16.5, humidityPercent: 55 }
  await addReading(desk, good)
  for (const [bad, field] of [
    [{ airC: -80 }, 'airC'],
    [{ humidityPercent: 140 }, 'humidityPercent'],
    [{ panelC: 900 }, 'panelC'],
    [{ at: wall('15T13:00') }, 'at'],
  ] as const)
    await expect(addReading(desk, { ...good, ...bad })).rejects.toMatchObject({ field })
  expect(await desk.store.read.reading.count()).toBe(1)
})

test('A bay shows its dew point, the coldest panel to be coated, and what it usually has', async () => {
  const bayNow = async () => (await conditionsNow(desk)).bays.find(bay => bay.bayId === bayId)!
  expect(await bayNow()).toMatchObject({ last: null, usualC: null, usualFrom: 'profile' })
  await addReading(desk, { bayId, at: wall('15T11:50'), airC: 25, panelC: null, humidityPercent: 50 })
  const bay = await bayNow()
  // 25 °C at 50 % has its dew point at 13.9 °C (Magnus, Sonntag 1990: tests/domain/cure/dewPoint.test.ts).
  expect(bay.last!.dewC).toBeCloseTo(13.9, 1)
  expect(bay.leastPanelC).toBeCloseTo(16.9, 1)
  expect(bay).toMatchObject({ usualC: 25, usualFrom: 'last week' })
  await setBayUsual(desk, { bayId, version: bay.version, celsius: 17 })
  expect(await bayNow()).toMatchObject({ usualC: 17, usualFrom: 'set', version: 1 })
  await expect(setBayUsual(desk, { bayId, version: 0, celsius: 12 })).rejects.toMatchObject({ code: 'stale' })
})

test('A long log is thinned for the chart without losing its coldest minute', async () => {
  const rows = Array.from({ length: 5000 }, (_, i) => {
    const at = new Date((wall('15T12:00') - 5000 + i) * 60_000).toISOString()
    return `${at},${i === 2345 ? 3 : 18}`
  })
  const text = `time,air\n${rows.join('\n')}\n`
  const mapping = { time: 'time', air: 'air', panel: null, humidity: null, dewPoint: null }
  const report = await importReadings(desk, { bayId, text, mapping, dateOrder: 'ymd', unit: 'C' })
  expect(report.added).toBe(5000)
  const shown = await listReadings(desk, { bayId, fromAt: wall('15T12:00') - 5000, toAt: wall('15T12:00') })
  expect(shown.length).toBeLessThanOrEqual(601)
  expect(Math.min(...shown.map(reading => reading.airC))).toBe(3)
})

const noUnit = 'Time,Temp\n2026-04-15 08:00,21.7\n2026-04-15 08:05,21.5\n'
const import_ = (text: string, unit: 'C' | 'F', fileName = 'log.csv') =>
  importReadings(desk, {
    bayId,
    text,
    fileName,
    unit,
    mapping: { time: 'Time', air: 'Temp', panel: null, humidity: null, dewPoint: null },
    dateOrder: 'ymd',
  })
const shownC = async () =>
  (await listReadings(desk, { bayId, fromAt: wall('15T00:00'), toAt: wall('15T12:00') })).map(each =>
    Number(each.airC.toFixed(1)),
  )
const files = async () => (await conditionsNow(desk)).bays.find(bay => bay.bayId === bayId)!.imports

test('A file that does not name its unit is asked about, even in a shop that writes Fahrenheit', async () => {
  expect(await previewImport(desk, { text: noUnit })).toMatchObject({ unit: null, remembered: false })
  expect(await previewImport(desk, { text: noUnit.replace('21.7', '21.7 °C') })).toMatchObject({ unit: 'C' })
  expect(await previewImport(desk, { text: noUnit.replace('Temp', 'Temp Fahrenheit') })).toMatchObject({
    unit: 'F',
  })
  await import_(noUnit, 'C')
  expect(await previewImport(desk, { text: noUnit })).toMatchObject({ unit: 'C', remembered: true })
})

test('A file is taken back whole, and taken in again in the right unit', async () => {
  await addReading(desk, { bayId, at: wall('15T09:00'), airC: 20, panelC: null, humidityPercent: null })
  await import_(noUnit, 'F', 'wrong.csv')
  expect(await shownC()).toEqual([-5.7, -5.8, 20])
  const [wrong] = await files()
  expect(wrong).toMatchObject({ fileName: 'wrong.csv', count: 2, importedAt: desk.now() })
  await takeBackImport(desk, { id: wrong!.id })
  expect(await shownC()).toEqual([20])
  expect(await files()).toEqual([])
  expect(await import_(noUnit, 'C')).toMatchObject({ added: 2, duplicates: 0 })
  expect(await shownC()).toEqual([21.7, 21.5, 20])
  await expect(takeBackImport(desk, { id: wrong!.id })).rejects.toMatchObject({ code: 'missing' })
  const line = await desk.store.read.auditLine.findFirst({ where: { act: 'readings taken back' } })
  expect(line).toMatchObject({ entity: 'bay', entityId: bayId, detail: { fileName: 'wrong.csv', count: 2 } })
})

test('Taken back the wrong file last, the right one stands; a reading taken out stays out', async () => {
  await import_(noUnit, 'F')
  desk.setNow('2026-04-15T16:05:00Z')
  await import_(noUnit, 'C')
  const [, wrong] = await files()
  await takeBackImport(desk, { id: wrong!.id })
  expect(await shownC()).toEqual([21.7, 21.5])
  const [first] = await listReadings(desk, { bayId, fromAt: wall('15T00:00'), toAt: wall('15T12:00') })
  await voidReading(desk, { id: first!.id })
  expect(await import_(noUnit, 'C')).toMatchObject({ added: 0, duplicates: 2 })
  expect(await shownC()).toEqual([21.5])
  expect(await files()).toHaveLength(1)
})

test('A typed reading that cannot be is refused in the unit it was typed in', async () => {
  // 150 °F, in a shop that writes Fahrenheit.
  const typed = { bayId, at: wall('15T09:00'), airC: (150 - 32) / 1.8, panelC: null, humidityPercent: null }
  await expect(addReading(desk, typed)).rejects.toMatchObject({
    field: 'airC',
    message: '150 °F cannot be; check the value and its unit.',
  })
  await expect(setBayUsual(desk, { bayId, version: 0, celsius: 60 })).rejects.toMatchObject({
    message: '140 °F is no usual temperature of a bay.',
  })
})
