import fs, { existsSync, mkdirSync, readdirSync, readFileSync, statSync, writeFileSync } from 'node:fs'
import { syncBuiltinESMExports } from 'node:module'
import { dirname, join } from 'node:path'
import Database from 'better-sqlite3'
import { afterEach, expect, it, onTestFinished } from 'vitest'
import { copiesDir, listCopies, makeCopy } from '../../../main/store/backup/copies.ts'
import { readContent, unpackCopy } from '../../../main/store/backup/readCopy.ts'
import { finishRestore, layOut, readyCopy, sayReady } from '../../../main/store/backup/restoring.ts'
import { makeFolder } from '../openDatabase.ts'
import { addCustomer, makeFullStore } from './makeFullStore.ts'

const at = 29_604_030
const order = { at, passphrase: null }
const moving = ['renameSync', 'rmSync', 'mkdirSync', 'mkdtempSync', 'writeFileSync'] as const
const whole = Object.fromEntries(moving.map(name => [name, fs[name]]))

function put(functions: Partial<typeof fs>): void {
  Object.assign(fs, functions)
  syncBuiltinESMExports()
}

afterEach(() => put(whole))

/** From the n-th change of a file on nothing happens any more, as after a kill: not even what would tidy up. */
function dieAt(nth: number): { reached(): boolean } {
  let changes = 0
  for (const name of moving) {
    const real = fs[name] as (...rest: unknown[]) => unknown
    put({
      [name]: (...rest: unknown[]) => {
        changes += 1
        if (changes >= nth) throw new Error('killed')
        return real(...rest)
      },
    })
  }
  return { reached: () => changes >= nth }
}

const names = (file: string): string[] => {
  const database = new Database(file, { readonly: true })
  try {
    return database.prepare('select name from Customer order by rowid').pluck().all() as string[]
  } finally {
    database.close()
  }
}

/** A folder killed with an act in its log alone and a newer photo, and a copy of before made ready to take its place. */
async function readyToRestore(): Promise<string> {
  const { store, file } = await makeFullStore(1)
  const running = dirname(file)
  mkdirSync(join(running, 'files'))
  writeFileSync(join(running, 'files', 'photo.txt'), 'old')
  const copy = await makeCopy(file, order)
  writeFileSync(join(running, 'files', 'photo.txt'), 'new')
  await addCustomer(store, 'Answered last')
  const dataDir = makeFolder()
  for (const name of ['lustrum.db', 'lustrum.db-wal', 'files'])
    fs.cpSync(join(running, name), join(dataDir, name), { recursive: true })
  expect(statSync(join(dataDir, 'lustrum.db-wal')).size).toBeGreaterThan(0)
  const { header } = await layOut(dataDir, copy.path, null)
  sayReady(dataDir, { shopId: header.shopId, madeAt: header.madeAt, shopName: '' })
  return dataDir
}

/** What is kept of what was here: who is on file in it, and its photo. */
async function kept(dataDir: string): Promise<{ names: string[]; photo: string }[]> {
  const copies = join(dataDir, 'backups')
  const found: { names: string[]; photo: string }[] = []
  const take = (folder: string) => {
    if (existsSync(join(folder, 'lustrum.db')))
      found.push({
        names: names(join(folder, 'lustrum.db')),
        photo: readFileSync(join(folder, 'files', 'photo.txt'), 'utf8'),
      })
  }
  for (const name of readdirSync(copies).filter(each => each.endsWith('.lustrum-copy'))) {
    const into = makeFolder()
    await unpackCopy(join(copies, name), null, into)
    take(into)
  }
  const aside = join(dataDir, 'set-aside')
  if (existsSync(aside)) for (const name of readdirSync(aside)) take(join(aside, name))
  return found
}

it.each([
  ['a copy is made of it', (_: string) => {}],
  ['no copy can be made of it', (dataDir: string) => writeFileSync(join(dataDir, 'backups'), '')],
])(
  'killed anywhere, keeps all of what was here and goes on at the next start, where %s',
  async (_, spoil) => {
    const ready = await readyToRestore()
    spoil(ready)
    for (let nth = 1, over = false; !over; nth++) {
      const dataDir = makeFolder()
      fs.cpSync(ready, dataDir, { recursive: true })
      const file = join(dataDir, 'lustrum.db')
      const death = dieAt(nth)
      await finishRestore(file, dataDir, order).catch(() => {})
      over = !death.reached()
      put(whole)
      const restored = over ? null : await finishRestore(file, dataDir, order)
      expect(readyCopy(dataDir), `${nth}`).toBeNull()
      expect(names(file), `${nth}`).toEqual(['Customer 1'])
      expect(readFileSync(join(dataDir, 'files', 'photo.txt'), 'utf8')).toBe('old')
      expect(existsSync(join(dataDir, 'restore'))).toBe(false)
      if (restored?.keptAs) expect(existsSync(restored.keptAs)).toBe(true)
      if (existsSync(join(dataDir, 'backups')) && statSync(join(dataDir, 'backups')).isFile())
        fs.rmSync(join(dataDir, 'backups'))
      mkdirSync(join(dataDir, 'backups'), { recursive: true })
      expect(await kept(dataDir), `${nth}`).toContainEqual({
        names: ['Customer 1', 'Answered last'],
        photo: 'new',
      })
    }
  },
)

it('keeps both states of two restores within a minute', async () => {
  const { file, store } = await makeFullStore(1)
  await makeCopy(file, { ...order, beforeRestore: true })
  await addCustomer(store, 'Second')
  await makeCopy(file, { ...order, beforeRestore: true })
  const copies = await listCopies(copiesDir(dirname(file)))
  expect(copies.map(({ beforeRestore }) => beforeRestore)).toEqual([true, true])
  const customers = await Promise.all(
    copies.map(async ({ path }) => (await readContent(path, null)).content.holdings.customers),
  )
  expect(customers.sort()).toEqual([1, 2])
})

it('puts a copy where nothing was, and keeps nothing', async () => {
  const { file } = await makeFullStore(2)
  const copy = await makeCopy(file, order)
  const dataDir = makeFolder()
  const { header } = await layOut(dataDir, copy.path, null)
  sayReady(dataDir, { shopId: header.shopId, madeAt: header.madeAt, shopName: 'Ashdown' })
  const restored = await finishRestore(join(dataDir, 'lustrum.db'), dataDir, order)
  expect(restored).toEqual({ shopId: header.shopId, madeAt: at, shopName: 'Ashdown', keptAs: null })
  expect(names(join(dataDir, 'lustrum.db'))).toEqual(['Customer 1', 'Customer 2'])
  expect(readdirSync(dataDir).sort()).toEqual(['lustrum.db', 'shop.json'])
})

it.each([null, 'a long enough phrase'])(
  'lets go of each file of a copy it has read, locked with %s',
  async passphrase => {
    const { file } = await makeFullStore(1)
    const real = fs.createReadStream
    onTestFinished(() => put({ createReadStream: real }))
    const opened: fs.ReadStream[] = []
    put({
      createReadStream: (...rest) => {
        const stream = real(...rest)
        opened.push(stream)
        return stream
      },
    })
    const copy = await makeCopy(file, { ...order, passphrase })
    await readContent(copy.path, passphrase)
    expect(opened.length).toBeGreaterThan(3)
    await expect.poll(() => opened.filter(({ closed }) => !closed).map(({ path }) => path)).toEqual([])
  },
)
