import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { createApp } from '../../main/api/app.ts'
import type { Fault } from '../../main/api/trpc.ts'
import { closedOnce, makeDesk, type TestDesk } from '../services/makeDesk.ts'

export interface Answer {
  status: number
  // biome-ignore lint/suspicious/noExplicitAny: what a browser gets is untyped too
  data: any
  message: string
  fault: Fault | null
}

export interface Api {
  desk: TestDesk
  rendererDir: string
  query(path: string, input?: unknown): Promise<Answer>
  mutate(path: string, input?: unknown): Promise<Answer>
  /** A file or a page. */
  get(path: string): Promise<Response>
  close(): Promise<void>
}

/** The whole fetch handler over a desk of its own, called as a browser calls it. */
export async function makeApi(now?: string): Promise<Api> {
  const desk = await makeDesk(now)
  const rendererDir = mkdtempSync(join(tmpdir(), 'lustrum-page-'))
  writeFileSync(join(rendererDir, 'index.html'), '<html></html>')
  const app = createApp({ desk, rendererDir, onFault: error => console.error(error) })
  const read = async (response: Response): Promise<Answer> => {
    const body = (await response.json()) as {
      result?: { data: unknown }
      error?: { message: string; data: { fault: Fault | null } }
    }
    return {
      status: response.status,
      data: body.result?.data,
      message: body.error?.message ?? '',
      fault: body.error?.data.fault ?? null,
    }
  }
  return {
    desk,
    rendererDir,
    async query(path, input) {
      const tail = input === undefined ? '' : `?input=${encodeURIComponent(JSON.stringify(input))}`
      return read(await app.request(`/trpc/${path}${tail}`))
    },
    async mutate(path, input = {}) {
      return read(
        await app.request(`/trpc/${path}`, {
          method: 'POST',
          headers: { 'content-type': 'application/json' },
          body: JSON.stringify(input),
        }),
      )
    },
    get: async path => app.request(path),
    close: closedOnce(async () => {
      await desk.close()
      rmSync(rendererDir, { recursive: true, force: true })
    }),
  }
}

/** Monday to Friday, 08:00 to 18:00. */
export const weekdays = [1, 2, 3, 4, 5].map(weekday => ({ weekday, from: 480, to: 1080 }))

/** A small shop as the first run sends it. */
export const firstRun = {
  name: 'Ashdown Paint Care',
  zone: 'America/New_York',
  currency: 'USD',
  units: 'us',
  country: 'US',
  weekly: weekdays,
  bays: [
    { name: 'Bay 1', capabilities: ['wet'] },
    { name: 'Bay 2', capabilities: ['polish', 'clean', 'cure'] },
  ],
  crew: [{ name: 'Mika', skills: ['wash', 'polish', 'coat'] }],
}
