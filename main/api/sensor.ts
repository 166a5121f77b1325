/**
 * The door for a bay's sensor: one address that takes readings and gives nothing out.
 *
 *   POST /sensor/readings
 *   Authorization: Bearer <the token of one sensor, as shown once when it was added>
 *   Content-Type: application/json
 *
 *   {"unit": "C", "readings": [{"time": "2026-04-15T07:40:00Z", "air": 17.5, "humidity": 46, "panel": 16.9}]}
 *
 * `time` is an instant with its offset, seconds since 1970, or wall time of the shop (`2026-04-15 07:40`). `unit` is
 * C or F and may be left out (C); `humidity` (%), `dewPoint` and `panel` may be left out of a reading. Answers
 * `{"kept", "known", "refused": [{"row", "field", "message"}]}` with 200 where at least the body could be read; posting
 * a reading again is harmless. 400: not such a body. 401: no such token. 413 and 429: too much at once; try later.
 */

import { Hono } from 'hono'
import { bodyLimit } from 'hono/body-limit'
import { say } from '../domain/language/index.ts'
import { postedReadings } from '../services/cure/inputs.ts'
import { sensorOf, takeReadings } from '../services/cure/sensors.ts'
import type { Desk } from '../services/desk/desk.ts'

/** Past the guard's cookie: it has a key of its own. */
export const sensorPath = '/sensor/readings'

const mostBytes = 64 * 1024

/** Posts of one sensor a minute; and posts without a token that counts, all together. */
const mostPerMinute = 60
const mostStrangersPerMinute = 30

/** The sensors' address. `clockMs` is a clock that only goes forward, for the rates. */
export function sensorDoor(desk: Desk, clockMs: () => number = () => performance.now()): Hono {
  const ofSensors = rate(mostPerMinute, clockMs)
  const ofStrangers = rate(mostStrangersPerMinute, clockMs)
  return new Hono().post(
    sensorPath,
    bodyLimit({
      maxSize: mostBytes,
      onError: context =>
        context.json({ error: say('That is more than can be taken at once: 64 KB at most.') }, 413),
    }),
    async context => {
      const token = /^Bearer ([\w-]{20,100})$/.exec(context.req.header('authorization') ?? '')?.[1]
      const sensor = token ? await sensorOf(desk, token) : null
      if (!sensor)
        return ofStrangers('all')
          ? context.json({ error: say('No sensor has this token: add one on the Conditions screen.') }, 401)
          : context.json({ error: say('Too many readings sent without a valid token; wait a minute.') }, 429)
      if (!ofSensors(sensor.id))
        return context.json(
          { error: say('Too many readings: at most {mostPerMinute} a minute.', { mostPerMinute }) },
          429,
        )
      const read = postedReadings.safeParse(await context.req.json().catch(() => null))
      if (!read.success) {
        const issue = read.error.issues[0]
        return context.json({ error: `${issue?.path.join('.') || 'body'}: ${issue?.message}` }, 400)
      }
      return context.json(await takeReadings(desk, sensor, read.data))
    },
  )
}

/** Says whether one more is allowed within the minute that is running for this name. */
function rate(most: number, clockMs: () => number): (name: string) => boolean {
  const windows = new Map<string, { since: number; count: number }>()
  return name => {
    const now = clockMs()
    const window = windows.get(name)
    if (!window || now - window.since >= 60_000) {
      windows.set(name, { since: now, count: 1 })
      return true
    }
    window.count++
    return window.count <= most
  }
}
