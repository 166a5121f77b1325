import { execFileSync } from 'node:child_process'
import { writeFileSync } from 'node:fs'
import { join } from 'node:path'
import fc from 'fast-check'
import { expect, it } from 'vitest'
import { packZip } from '../../../main/store/tables/zip.ts'
import { unzip } from '../../services/leaving/unzip.ts'
import { makeFolder } from '../openDatabase.ts'

async function zipOf(files: readonly (readonly [name: string, parts: readonly (string | Uint8Array)[]])[]) {
  const chunks: Uint8Array[] = []
  await packZip(
    (async function* () {
      for (const [name, parts] of files) yield { name, parts }
    })(),
    async bytes => void chunks.push(bytes),
  )
  return Buffer.concat(chunks)
}

it('gives back every file under its name, empty ones and those that came in parts too', async () => {
  const name = fc.string({ unit: 'grapheme', minLength: 1, maxLength: 20 })
  const parts = fc.array(fc.oneof(fc.string({ unit: 'grapheme' }), fc.uint8Array({ maxLength: 3_000 })))
  const files = fc.uniqueArray(fc.tuple(name, parts), { maxLength: 6, selector: ([name]) => name })
  await fc.assert(
    fc.asyncProperty(files, async files => {
      const read = unzip(await zipOf(files))
      expect([...read]).toEqual(
        files.map(([name, parts]) => [name, Buffer.concat(parts.map(part => Buffer.from(part as string)))]),
      )
    }),
  )
})

it('is opened by another program', async context => {
  const file = join(makeFolder(), 'a.zip')
  writeFileSync(
    file,
    await zipOf([
      ['tables/ö b.csv', ['a,b\r\n', 'ü']],
      ['empty', []],
    ]),
  )
  try {
    execFileSync('unzip', ['-v'])
  } catch {
    context.skip('no unzip here')
  }
  expect(execFileSync('unzip', ['-t', file]).toString()).toContain('No errors detected')
  expect(execFileSync('unzip', ['-p', file, 'tables/*']).toString()).toBe('a,b\r\nü')
})

it('stops where what is packed, or where it goes, fails', async () => {
  const broken = (async function* () {
    yield { name: 'a', parts: failing() }
  })()
  function* failing() {
    yield 'a'
    throw new Error('gone')
  }
  await expect(packZip(broken, async () => {})).rejects.toThrow('gone')
  const full = () => Promise.reject(new Error('disk full'))
  await expect(
    packZip(
      (async function* () {
        yield { name: 'a', parts: ['b'] }
      })(),
      full,
    ),
  ).rejects.toThrow('disk full')
})
