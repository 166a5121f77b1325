import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { freshKeys, linkKey } from '../../main/hosts/web/keys.ts'
import { serveWeb } from '../../main/hosts/web/serve.ts'
import { makeDesk, type TestDesk } from '../services/makeDesk.ts'

export interface DoorHost {
  desk: TestDesk
  /** Of the real server. */
  address: string
  /** What a page that was let in sends. */
  headers: Record<string, string>
  /** The tail of a document's address. */
  link: string
  close(): Promise<void>
}

/** The web host on a port of its own over a desk of its own, with a browser let in. */
export async function makeDoor(now?: string): Promise<DoorHost> {
  const desk = await makeDesk(now)
  const rendererDir = mkdtempSync(join(tmpdir(), 'lustrum-page-'))
  writeFileSync(join(rendererDir, 'index.html'), '<html></html>')
  const keys = freshKeys()
  const web = await serveWeb({
    desk,
    screens: { rendererDir },
    port: 0,
    keys,
    onFault: error => console.error(error),
  })
  const address = `http://127.0.0.1:${web.port}`
  const enter = await fetch(web.entrance())
  return {
    desk,
    address,
    headers: {
      cookie: (enter.headers.get('set-cookie') ?? '').split(';')[0] ?? '',
      'x-lustrum-door': keys.token,
    },
    link: `?door=${linkKey(keys)}`,
    async close() {
      await web.close()
      await desk.close()
      rmSync(rendererDir, { recursive: true, force: true })
    },
  }
}
