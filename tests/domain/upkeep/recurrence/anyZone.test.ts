// The package's own trackers hold several reports of the machine's zone changing its results; ours must not.
import { execFileSync } from 'node:child_process'
import { fileURLToPath } from 'node:url'
import { expect, it } from 'vitest'

function answersIn(zone: string) {
  const script = fileURLToPath(new URL('./anyZone.ts', import.meta.url))
  return JSON.parse(
    execFileSync(process.execPath, [script], { env: { ...process.env, TZ: zone }, encoding: 'utf8' }),
  )
}

it('gives the same occurrences on a machine in New York, Auckland or Greenwich', () => {
  const utc = answersIn('UTC')
  expect(utc.machineOffsetMin).toBe(0)
  for (const [zone, offsetMin] of [
    ['America/New_York', 300],
    ['Pacific/Auckland', -780],
  ] as const) {
    const { machineOffsetMin, ...there } = answersIn(zone)
    expect(machineOffsetMin).toBe(offsetMin)
    expect(there).toEqual({ answers: utc.answers, nextDay: utc.nextDay })
  }
})
