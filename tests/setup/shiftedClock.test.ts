import { execFileSync } from 'node:child_process'
import { fileURLToPath } from 'node:url'
import { describe, expect, it } from 'vitest'
import { instants } from './instants.ts'

const preload = fileURLToPath(new URL('shiftedClock.mjs', import.meta.url))
const clocks = `[Temporal.Now.instant().epochMilliseconds, Date.now(), new Date().getTime(), Date.parse(Date()),
  Temporal.Now.zonedDateTimeISO('UTC').epochMilliseconds, Temporal.Now.plainDateISO('UTC').toString()]`

/** What a process of its own takes for the present, on every clock it has. */
function presentOf(now: string): unknown[] {
  // The real present, which this process may not believe in itself.
  const began = String(Math.floor(performance.timeOrigin + performance.now()))
  const env = { ...process.env, LUSTRUM_TEST_NOW: now, LUSTRUM_TEST_BEGAN: began, NODE_OPTIONS: '' }
  const args = ['--import', preload, '-p', `JSON.stringify(${clocks})`]
  return JSON.parse(execFileSync(process.execPath, args, { env, encoding: 'utf8' })) as unknown[]
}

describe('a shifted clock', () => {
  it('is every clock of the process', () => {
    const [day, ...ms] = presentOf('2028-02-29T11:00:00Z').reverse()
    expect(day).toBe('2028-02-29')
    for (const each of ms) expect(Math.abs(Number(each) - Date.UTC(2028, 1, 29, 11))).toBeLessThan(20_000)
  })
})

describe('the awkward instants', () => {
  it('are twelve, in three zones at least, and are there on the clocks of their zone', () => {
    // Temporal refuses a wall time whose offset is not the zone's.
    const times = instants.map(({ at }) => Temporal.ZonedDateTime.from(at, { offset: 'reject' }))
    expect(new Set(times.map(time => time.epochMilliseconds)).size).toBe(12)
    expect(new Set(times.map(time => time.timeZoneId)).size).toBeGreaterThanOrEqual(3)
  })

  it('hold the four nights on which a clock changes', () => {
    const changes = instants.filter(({ at }) => {
      const time = Temporal.ZonedDateTime.from(at)
      return time.add({ minutes: 10 }).offset !== time.offset
    })
    expect(changes).toHaveLength(4)
  })
})
