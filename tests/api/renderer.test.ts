import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { gunzipSync, gzipSync } from 'node:zlib'
import { afterEach, beforeEach, expect, it } from 'vitest'
import { type App, createApp } from '../../main/api/app.ts'
import { makeDesk, type TestDesk } from '../services/makeDesk.ts'

const script = 'console.log("here")\n'.repeat(50)
let dir: string
let desk: TestDesk
let app: App

beforeEach(async () => {
  dir = mkdtempSync(join(tmpdir(), 'lustrum-page-'))
  mkdirSync(join(dir, 'assets'))
  writeFileSync(join(dir, 'index.html'), '<html></html>')
  writeFileSync(join(dir, 'assets', 'a-1.js'), script)
  writeFileSync(join(dir, 'assets', 'a-1.js.gz'), gzipSync(script))
  writeFileSync(join(dir, 'assets', 'b-1.svg'), '<svg/>')
  desk = await makeDesk()
  app = createApp({ desk, rendererDir: dir })
})
afterEach(async () => {
  await desk.close()
  rmSync(dir, { recursive: true, force: true })
})

const get = (path: string, encodings?: string) =>
  app.request(path, encodings ? { headers: { 'accept-encoding': encodings } } : undefined)

it('sends a script compressed to a browser that asks for it, and as it is to a window that does not', async () => {
  const packed = await get('/assets/a-1.js', 'gzip, deflate, br')
  expect(packed.headers.get('content-encoding')).toBe('gzip')
  expect(packed.headers.get('content-type')).toBe('text/javascript; charset=utf-8')
  const bytes = Buffer.from(await packed.arrayBuffer())
  expect(bytes.length).toBeLessThan(script.length / 5)
  expect(gunzipSync(bytes).toString()).toBe(script)

  const plain = await get('/assets/a-1.js')
  expect(plain.headers.get('content-encoding')).toBeNull()
  expect(await plain.text()).toBe(script)
})

it('sends what the build laid no compressed form beside as it is, and has no address for the form itself', async () => {
  const picture = await get('/assets/b-1.svg', 'gzip')
  expect(picture.headers.get('content-encoding')).toBeNull()
  expect(await picture.text()).toBe('<svg/>')
  expect((await get('/assets/a-1.js.gz', 'gzip')).status).toBe(404)
})
