import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { atWall } from '../../../main/domain/calendar/index.ts'
import { cleanReadings, rawReadings } from '../../../main/domain/cure/index.ts'
import type { RawReading, ReadingFormat } from '../../../main/domain/cure/readings.ts'

const zone = 'America/New_York'
const format: ReadingFormat = { zone, dateOrder: 'mdy', unit: 'C', latestAt: 40_000_000 }
const raw = (
  row: number,
  time: string,
  air: string | number,
  more: Partial<RawReading> = {},
): RawReading => ({
  row,
  time,
  air,
  ...more,
})
const at = (wallMin: number, date = '2026-05-05') => atWall(date, wallMin, zone)

describe('a file of readings', () => {
  it('is read whole, in order, with nothing to report', () => {
    const table = [
      { when: '2026-05-05 08:00', t: '20.5', rh: '55', note: '' },
      { when: '2026-05-05 08:10', t: '21', rh: '', note: 'door open' },
    ]
    const mapping = { time: 'when', air: 't', panel: null, humidity: 'rh', dewPoint: null }
    expect(cleanReadings(rawReadings(table, mapping), format)).toEqual({
      readings: [
        { at: at(480), airC: 20.5, panelC: null, humidityPercent: 55 },
        { at: at(490), airC: 21, panelC: null, humidityPercent: null },
      ],
      refused: [],
      duplicates: 0,
      outOfOrder: 0,
    })
    expect(rawReadings(table, mapping).map(({ row }) => row)).toEqual([2, 3])
  })

  it('keeps the rest when rows are impossible, and says which and why', () => {
    const report = cleanReadings(
      [
        raw(2, '2026-05-05 08:00', 20),
        raw(3, '2026-05-05 08:10', -80),
        raw(4, '2026-05-05 08:20', 20, { humidity: 140 }),
        raw(5, '2026-05-05 08:30', 'ERR'),
        raw(6, '31/31/2026 08:40', 20),
        raw(7, '2026-05-05 08:50', ''),
        raw(8, '2026-05-05 09:00', 72),
        raw(9, '2050-05-05 09:00', 20),
        raw(10, '2026-05-05 09:10', 20, { humidity: 0 }),
        raw(11, '2026-05-05 09:20', 20, { panel: 151 }),
        raw(12, '2026-05-05 09:30', 20, { dewPoint: 25 }),
        raw(13, '2026-05-05 09:40', 21, { panel: 60, humidity: '100 %' }),
      ],
      { ...format, latestAt: at(1440) },
    )
    expect(report.readings).toEqual([
      { at: at(480), airC: 20, panelC: null, humidityPercent: null },
      { at: at(580), airC: 21, panelC: 60, humidityPercent: 100 },
    ])
    expect(report.refused.map(({ row, field, code, value }) => [row, field, code, value])).toEqual([
      [3, 'air', 'temperature-impossible', -80],
      [4, 'humidity', 'humidity-impossible', 140],
      [5, 'air', 'value-unread', 'ERR'],
      [6, 'time', 'time-unread', '31/31/2026 08:40'],
      [7, 'air', 'value-missing', ''],
      [8, 'air', 'temperature-impossible', 72],
      [9, 'time', 'time-future', '2050-05-05 09:00'],
      [10, 'humidity', 'humidity-impossible', 0],
      [11, 'panel', 'temperature-impossible', 151],
      [12, 'dewPoint', 'humidity-impossible', 25],
    ])
    expect(report.refused[0]!.message).toBe('Row 3: -80 °C cannot be; check the value and its unit.')
  })

  it('takes what is just possible: -40 and 60 °C, a panel of 150 °C under a lamp', () => {
    const rows = [
      raw(2, '2026-05-05 08:00', -40, { panel: -40 }),
      raw(3, '2026-05-05 08:10', 60, { panel: 150, humidity: 1 }),
    ]
    const { readings, refused } = cleanReadings(rows, { ...format, latestAt: at(490) })
    expect(refused).toEqual([])
    expect(readings.map(({ airC, panelC }) => [airC, panelC])).toEqual([
      [-40, -40],
      [60, 150],
    ])
  })

  it('reads Fahrenheit, by the file or by the value, and decimal commas', () => {
    const inF = cleanReadings(
      [
        raw(2, '2026-05-05 08:00', '68'),
        raw(3, '2026-05-05 08:10', '10 °C', { panel: '50°F', humidity: '45,5%' }),
      ],
      { ...format, unit: 'F' },
    )
    expect(inF.readings[0]!.airC).toBeCloseTo(20, 12)
    expect(inF.readings[1]).toMatchObject({ airC: 10, humidityPercent: 45.5 })
    expect(inF.readings[1]!.panelC).toBeCloseTo(10, 12)
    const impossible = cleanReadings([raw(2, '2026-05-05 08:00', '-999')], { ...format, unit: 'F' })
    expect(impossible.refused[0]).toMatchObject({ code: 'temperature-impossible', value: '-999' })
  })

  it('puts rows in order, counts strays, and keeps the colder of two in one minute', () => {
    const report = cleanReadings(
      [
        raw(2, '2026-05-05 08:00', 20),
        raw(3, '2026-05-05 08:20', 22),
        raw(4, '2026-05-05 08:10', 21),
        raw(5, '2026-05-05 08:30', 23),
        raw(6, '2026-05-05 08:30:40', 19),
        raw(7, '2026-05-05 08:30', 23),
      ],
      format,
    )
    expect(report.readings.map(reading => [reading.at - at(480), reading.airC])).toEqual([
      [0, 20],
      [10, 21],
      [20, 22],
      [30, 19],
    ])
    expect([report.duplicates, report.outOfOrder]).toEqual([2, 1])
  })

  it('takes a file that has its newest row first', () => {
    const rows = [
      raw(2, '2026-05-05 08:20', 22),
      raw(3, '2026-05-05 08:10', 21),
      raw(4, '2026-05-05 08:00', 20),
    ]
    const report = cleanReadings(rows, format)
    expect(report.readings.map(({ airC }) => airC)).toEqual([20, 21, 22])
    expect(report.outOfOrder).toBe(0)
  })

  it('works the humidity out where the logger gives a dew point', () => {
    // Sonntag constants, sourced/dewpoint.json, case rh-20-9.3.
    const [reading] = cleanReadings([raw(2, '2026-05-05 08:00', 20, { dewPoint: 9.3 })], format).readings
    expect(reading!.humidityPercent).toBeCloseTo(50.1509, 2)
  })

  it('loses nothing and orders everything, whatever the order of the rows', () => {
    fc.assert(
      fc.property(
        fc.uniqueArray(fc.integer({ min: 0, max: 1439 }), { minLength: 1, maxLength: 60 }),
        fc.integer({ min: 0, max: 59 }),
        (minutes, bad) => {
          const time = (m: number) =>
            `2026-05-05 ${String(Math.floor(m / 60)).padStart(2, '0')}:${String(m % 60).padStart(2, '0')}`
          const rows = minutes.map((m, i) => raw(i + 2, time(m), i === bad ? 999 : 20))
          const { readings, refused } = cleanReadings(rows, format)
          const good = minutes.filter((_, i) => i !== bad).sort((a, b) => a - b)
          expect(readings.map(reading => reading.at - at(0))).toEqual(good)
          expect(refused).toHaveLength(bad < minutes.length ? 1 : 0)
        },
      ),
    )
  })
})

describe('a file that runs through a clock change', () => {
  // America/New_York, 1 November 2026: 01:00 to 01:59 comes twice (IANA time zone database).
  const passes = ['00:30', '01:00', '01:30', '01:00', '01:30', '02:00'].map(
    (time, i) => [`2026-11-01 ${time}`, 20 - i] as const,
  )
  const from = atWall('2026-11-01', 30, zone)
  const expected = [0, 30, 60, 90, 120, 150].map((minutes, i) => [minutes, 20 - i])

  it('tells the two passes of the repeated hour apart', () => {
    const report = cleanReadings(
      passes.map(([time, celsius], i) => raw(i + 2, time, celsius)),
      format,
    )
    expect(report.readings.map(reading => [reading.at - from, reading.airC])).toEqual(expected)
    expect([report.duplicates, report.outOfOrder, report.refused.length]).toEqual([0, 0, 0])
  })

  it('also newest first', () => {
    const rows = passes.map(([time, celsius], i) => raw(i + 2, time, celsius)).reverse()
    const report = cleanReadings(rows, format)
    expect(report.readings.map(reading => [reading.at - from, reading.airC])).toEqual(expected)
  })

  it('leaves no false gap in spring', () => {
    const rows = [raw(2, '2026-03-08 01:50', 20), raw(3, '2026-03-08 03:00', 20)]
    const [a, b] = cleanReadings(rows, format).readings
    expect(b!.at - a!.at).toBe(10)
  })
})
