import type { AddressInfo } from 'node:net'
import { serve as listen } from '@hono/node-server'
import { type App, createApp } from '../../api/app.ts'
import { say } from '../../domain/language/index.ts'
import { Refusal } from '../../domain/refusal.ts'
import type { Desk } from '../../services/desk/desk.ts'
import { makeEntrances } from './entrances.ts'
import { makeGuard } from './guard.ts'
import { type DoorKeys, freshKeys, type KeptDoor } from './keys.ts'

/** How long a request may take to arrive whole: the largest file over a slow disk, with room. */
const requestMs = 60_000

type Fetch = App['fetch']

export interface Screens {
  /** The folder of the page, and of what it loads. */
  rendererDir: string
  /** Put around the whole handler: for what loads from elsewhere. */
  around?: (handler: Fetch) => Fetch
}

export interface WebHostOptions {
  desk: Desk
  screens: Screens
  /** 0 takes any free one. */
  port: number
  keys: DoorKeys
  onFault: (error: unknown, asked?: string) => void
  /** Told when a browser has been let in. */
  onEntered?: () => void
}

export interface WebHost {
  port: number
  keys: DoorKeys
  /** A new address that lets one browser in, once. */
  entrance(): string
  close(): Promise<void>
}

/** Serves the app on the loopback address only. */
export async function serveWeb(options: WebHostOptions): Promise<WebHost> {
  const { desk, screens, port, keys, onFault, onEntered } = options
  let taken = port
  const entrances = makeEntrances()
  const guard = makeGuard({ keys, entrances, ...(onEntered && { onEntered }) }, () => taken)
  const app = createApp({ desk, rendererDir: screens.rendererDir, guard, onFault })
  const fetch = screens.around?.(app.fetch) ?? app.fetch
  const server = await new Promise<ReturnType<typeof listen>>((resolve, reject) => {
    const starting = listen(
      { fetch, hostname: '127.0.0.1', port, serverOptions: { requestTimeout: requestMs } },
      () => resolve(starting),
    )
    starting.once('error', (error: NodeJS.ErrnoException) =>
      reject(error.code === 'EADDRINUSE' || error.code === 'EACCES' ? notToBeHad(port) : error),
    )
  })
  taken = (server.address() as AddressInfo).port
  return {
    port: taken,
    keys,
    entrance: () => `http://127.0.0.1:${taken}/enter/${entrances.issue()}`,
    close: () =>
      new Promise<void>((resolve, reject) => {
        server.close(error => (error ? reject(error) : resolve()))
        // Windows that listen for changes would otherwise hold the server open.
        if ('closeAllConnections' in server) server.closeAllConnections()
      }),
  }
}

/**
 * Serves where it was served last time, with the same keys, so that open windows go on by themselves. Where another
 * program has that port by now, the keys are new too: it may have been sent them.
 */
export async function serveAgain(
  kept: KeptDoor | null,
  options: Omit<WebHostOptions, 'keys'>,
): Promise<WebHost> {
  const { port } = options
  if (!kept || (port !== 0 && port !== kept.port)) return serveWeb({ ...options, keys: freshKeys() })
  try {
    return await serveWeb({ ...options, port: kept.port, keys: kept })
  } catch (error) {
    if (port !== 0 || !(error instanceof Refusal)) throw error
    return serveWeb({ ...options, keys: freshKeys() })
  }
}

function notToBeHad(port: number): Refusal {
  return new Refusal(
    'port-taken',
    '--port',
    port,
    say('Port {port} is in use: choose another with --port, or leave it out.', { port }),
  )
}
