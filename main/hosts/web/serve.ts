import type { AddressInfo } from 'node:net'
import { serve as listen } from '@hono/node-server'
import { createApp } from '../../api/app.ts'
import { Refusal } from '../../domain/refusal.ts'
import type { Desk } from '../../services/desk/desk.ts'
import { type DoorKeys, makeGuard } from './guard.ts'

export interface WebHostOptions {
  desk: Desk
  rendererDir: string
  /** 0 takes any free one. */
  port: number
  keys: DoorKeys
  onFault: (error: unknown) => void
}

export interface WebHost {
  port: number
  /** The address that lets a browser in. */
  entrance: string
  close(): Promise<void>
}

/** Serves the app on the loopback address only. */
export async function serveWeb({ desk, rendererDir, port, keys, onFault }: WebHostOptions): Promise<WebHost> {
  let taken = port
  const guard = makeGuard(keys, () => taken)
  const app = createApp({ desk, rendererDir, guard, onFault })
  const server = await new Promise<ReturnType<typeof listen>>((resolve, reject) => {
    const starting = listen({ fetch: app.fetch, hostname: '127.0.0.1', port }, () => resolve(starting))
    starting.once('error', (error: NodeJS.ErrnoException) =>
      reject(error.code === 'EADDRINUSE' || error.code === 'EACCES' ? notToBeHad(port) : error),
    )
  })
  taken = (server.address() as AddressInfo).port
  return {
    port: taken,
    entrance: `http://127.0.0.1:${taken}/enter/${keys.secret}`,
    close: () =>
      new Promise<void>((resolve, reject) => {
        server.close(error => (error ? reject(error) : resolve()))
        // Windows that listen for changes would otherwise hold the server open.
        if ('closeAllConnections' in server) server.closeAllConnections()
      }),
  }
}

function notToBeHad(port: number): Refusal {
  return new Refusal(
    'port-taken',
    '--port',
    port,
    `Port ${port} is not to be had: choose another with --port, or leave it out.`,
  )
}
