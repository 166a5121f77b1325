import type { AddressInfo } from 'node:net'
import { serve as listen } from '@hono/node-server'
import { createApp } from '../../api/app.ts'
import { Refusal } from '../../domain/refusal.ts'
import type { Desk } from '../../services/desk.ts'
import { makeDoor } from './guard.ts'

export interface WebHost {
  port: number
  /** The address that lets a browser in. */
  entrance: string
  close(): Promise<void>
}

/** Serves the app on the loopback address only. `port` 0 takes any free one. */
export async function serveWeb(
  desk: Desk,
  rendererDir: string,
  port: number,
  onFault: (error: unknown) => void,
): Promise<WebHost> {
  let taken = port
  const door = makeDoor(() => taken)
  const app = createApp({ desk, rendererDir, guard: door.guard, onFault })
  const server = await new Promise<ReturnType<typeof listen>>((resolve, reject) => {
    const starting = listen({ fetch: app.fetch, hostname: '127.0.0.1', port }, () => resolve(starting))
    starting.once('error', (error: NodeJS.ErrnoException) =>
      reject(
        error.code === 'EADDRINUSE'
          ? new Refusal(
              'port-taken',
              'port',
              port,
              `Port ${port} is taken: choose another with --port, or leave it out.`,
            )
          : error,
      ),
    )
  })
  taken = (server.address() as AddressInfo).port
  return {
    port: taken,
    entrance: `http://127.0.0.1:${taken}/enter/${door.secret}`,
    close: () =>
      new Promise<void>((resolve, reject) => {
        server.close(error => (error ? reject(error) : resolve()))
        if ('closeAllConnections' in server) server.closeAllConnections()
      }),
  }
}
