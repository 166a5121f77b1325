import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { freshKeys } from '../../main/hosts/web/guard.ts'
import { serveWeb } from '../../main/hosts/web/serve.ts'
import { makeDesk, type TestDesk } from '../services/makeDesk.ts'

export interface DoorHost {
  desk: TestDesk
  /** Of the real server. */
  address: string
  /** Of a browser that was let in. */
  cookie: string
  close(): Promise<void>
}

/** The web host on a port of its own over a desk of its own, with a browser let in. */
export async function makeDoor(now?: string): Promise<DoorHost> {
  const desk = await makeDesk(now)
  const rendererDir = mkdtempSync(join(tmpdir(), 'lustrum-page-'))
  writeFileSync(join(rendererDir, 'index.html'), '<html></html>')
  const keys = freshKeys()
  const web = await serveWeb({ desk, rendererDir, port: 0, keys, onFault: error => console.error(error) })
  const address = `http://127.0.0.1:${web.port}`
  const enter = await fetch(`${address}/enter/${keys.secret}`, { redirect: 'manual' })
  return {
    desk,
    address,
    cookie: enter.headers.get('set-cookie')!.split(';')[0]!,
    async close() {
      await web.close()
      await desk.close()
      rmSync(rendererDir, { recursive: true, force: true })
    },
  }
}
