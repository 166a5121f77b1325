import { describe, expect, it } from 'vitest'
import { guessMapping, readLog } from '../../../main/services/cure/readLog.ts'

describe('a logger’s file', () => {
  it('begins with its columns, the line above the first time, whatever stands over them', () => {
    const log = readLog(
      '\uFEFFLogger 7\n\nBattery;90 %\nTime;Air\n2026-04-15 08:00;20\n2026-04-15 08:05;21\n\n;\n',
    )
    expect(log).toEqual({
      columns: ['Time', 'Air'],
      rows: [
        { Time: '2026-04-15 08:00', Air: '20' },
        { Time: '2026-04-15 08:05', Air: '21' },
      ],
      firstRow: 5,
    })
  })

  it.each([',', ';', '\t', '|'])('is cut at %j, however much stands above its columns', delimiter => {
    const row = (...cells: string[]) => `${cells.join(delimiter)}\n`
    const file = `${'Logger 7\n'.repeat(15)}${row('Time', 'Air')}${row('2026-04-15 08:00', '20')}`
    expect(readLog(file).rows).toEqual([{ Time: '2026-04-15 08:00', Air: '20' }])
  })

  it('keeps a row of blanks between others, so that lines count on, and fills what a short row lacks', () => {
    const { rows } = readLog('Time,Air\n2026-04-15 08:00,20\n,\n2026-04-15 08:05\n')
    expect(rows).toEqual([
      { Time: '2026-04-15 08:00', Air: '20' },
      { Time: '', Air: '' },
      { Time: '2026-04-15 08:05', Air: '' },
    ])
  })

  it('names each column once, and those without a name by their place', () => {
    expect(readLog('Time, Air ,Air,\n2026-04-15 08:00,20,21,22\n').columns).toEqual([
      'Time',
      'Air',
      'Air (3)',
      'Column 4',
    ])
  })

  it('has its columns within the first forty lines, below which nothing is looked for', () => {
    const file = (lines: number) => `${'about\n'.repeat(lines)}Time,Air\n2026-04-15 08:00,20\n`
    expect(readLog(file(39))).toMatchObject({ columns: ['Time', 'Air'], firstRow: 41 })
    expect(() => readLog(file(40))).toThrow(expect.objectContaining({ code: 'no-rows', field: 'text' }))
    expect(() => readLog('2026-04-15 08:00,20\n')).toThrow('below a line of column names')
  })
})

describe('what its columns hold', () => {
  const guess = (heading: string, row: string, country = 'US') =>
    guessMapping(readLog(`${heading}\n${row}\n`), { country })

  it('is guessed from their names, the dew point before the temperature', () => {
    expect(guess('Dew point °C,Surface °C,Air °C,Humidity,When', '9.3,19,20,50,2026-04-15 08:00')).toEqual({
      mapping: {
        time: 'When',
        air: 'Air °C',
        panel: 'Surface °C',
        humidity: 'Humidity',
        dewPoint: 'Dew point °C',
      },
      dateOrder: 'mdy',
      unit: 'C',
    })
  })

  it('is the first column that is left where none is named as the air', () => {
    expect(guess('Time,Value,Other', '2026-04-15 08:00,20,3').mapping).toEqual({
      time: 'Time',
      air: 'Value',
      panel: null,
      humidity: null,
      dewPoint: null,
    })
    expect(guess('Time', '2026-04-15 08:00').mapping.air).toBe('')
  })

  it.each([
    ['US', '04/05/2026 08:00', 'mdy'],
    ['DE', '04/05/2026 08:00', 'dmy'],
    // No month has a 15th number: the other order is the right one whatever is usual.
    ['US', '15/04/2026 08:00', 'dmy'],
    ['DE', '04/15/2026 08:00', 'mdy'],
  ])('has its dates as usual in %s, unless %s cannot be one', (country, time, dateOrder) => {
    expect(guess('Time,Air', `${time},20`, country).dateOrder).toBe(dateOrder)
  })

  it.each([
    ['Temp (F)', '68', 'F'],
    ['Temp °C', '20', 'C'],
    ['temp celsius', '20', 'C'],
    ['temp fahrenheit', '68', 'F'],
    ['Temp', '20 °C', 'C'],
    ['Temp', '68 f', 'F'],
    ['Temp', '20', null],
    // The F of a word is no unit.
    ['Temp of the front', '20', null],
  ])('is in the unit that "%s" or "%s" names: %s', (heading, value, unit) => {
    expect(guess(`Time,${heading}`, `2026-04-15 08:00,${value}`).unit).toBe(unit)
  })
})
