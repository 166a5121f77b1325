import { mkdtempSync, readFileSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterEach, beforeEach, expect, it } from 'vitest'
import { saveDocument } from '../../../main/hosts/desktop/documents.ts'
import { makeShell } from './shell.ts'

let dir = ''
beforeEach(() => {
  dir = mkdtempSync(join(tmpdir(), 'lustrum-saved-'))
})
afterEach(() => rmSync(dir, { recursive: true, force: true }))

/** Opens a document that the app names like this; `choose` is what the person makes of the proposed path. */
async function save(choose: (proposed: string) => string, disposition = 'inline; filename="order-1.pdf"') {
  const proposed: string[] = []
  const { shell, seen } = makeShell({
    saveAs: path => {
      proposed.push(path)
      return choose(path)
    },
  })
  const headers = { 'content-disposition': disposition }
  const asked: string[] = []
  await saveDocument(
    shell,
    request => {
      asked.push(request.url)
      return new Response('%PDF-1.7', { headers })
    },
    'lustrum://app/documents/order/1.pdf',
  )
  return { proposed, seen, asked }
}

it('saves where the person says, and opens it with the system’s reader', async () => {
  const file = join(dir, 'May.pdf')
  const { proposed, seen, asked } = await save(() => file)
  expect(asked).toEqual(['lustrum://app/documents/order/1.pdf'])
  expect(proposed).toEqual([join('/desk/documents', 'order-1.pdf')])
  expect(readFileSync(file, 'utf8')).toBe('%PDF-1.7')
  expect(seen.opened).toEqual([file])
  expect(seen.errors).toEqual([])
})

it('does nothing where the person thinks better of it', async () => {
  const { seen } = await save(() => '')
  expect([seen.opened, seen.errors]).toEqual([[], []])
})

it('does not open what was given another ending: the system might run it', async () => {
  const file = join(dir, 'order.sh')
  const { seen } = await save(() => file)
  expect(readFileSync(file, 'utf8')).toBe('%PDF-1.7')
  expect(seen.opened).toEqual([])
})

it('says what to do where the file cannot be written', async () => {
  const { seen } = await save(() => join(dir, 'none', 'order.pdf'))
  expect(seen.errors[0]).toMatch(/order\.pdf could not be written .* choose another folder\.$/)
  expect(seen.opened).toEqual([])
})

it('takes no folder from a document’s name', async () => {
  for (const name of ['../../x.pdf', '..\\\\x.pdf', '/etc/x.pdf', '.hidden.pdf']) {
    const { proposed } = await save(() => '', `inline; filename="${name}"`)
    expect(proposed[0], name).toMatch(/^\/desk\/documents\/[\w][\w.-]*\.pdf$/)
  }
  expect((await save(() => '', '')).proposed[0]).toMatch(/\/document\.pdf$/)
})
