/** What the owner can send to whoever looks after the app: no name, number, address, price, nor anything typed. */

import { statSync } from 'node:fs'
import { release, totalmem } from 'node:os'
import { dirname } from 'node:path'
import app from '../../../package.json' with { type: 'json' }
import { zonedOf } from '../../domain/calendar/index.ts'
import { say } from '../../domain/language/index.ts'
import { readComputer } from '../../store/backup/computer.ts'
import { foundDamage } from '../../store/backup/readOver.ts'
import { keptFaults } from '../../store/faultLog.ts'
import type { Store, Tx } from '../../store/store.ts'
import { ownCopies } from '../backup/copying.ts'
import { passphraseOf } from '../backup/settings.ts'
import type { Desk } from '../desk/desk.ts'
import { slowestCalls } from './timings.ts'

/** More than these nobody reads; the log keeps the others. */
const most = 20

const shown = new WeakMap<Store, string>()

/** As one text, so that what is sent can be read first. */
export async function diagnostics(desk: Desk): Promise<{ text: string }> {
  const parts: [title: string, lines: string[]][] = [
    ['Lustrum', versions(desk)],
    [say('Database'), await database(desk)],
    [say('Copies'), await copies(desk)],
    [say('Rows'), await rows(desk.store.read)],
    [say('Slowest answers since the start (calls, mean ms, worst ms)'), answers(desk.store)],
    [say('Last errors (UTC)'), faults(desk)],
  ]
  const text = parts
    .map(([title, lines]) => `${title}\n${lines.map(line => `  ${line}\n`).join('')}`)
    .join('\n')
  shown.set(desk.store, text)
  return { text }
}

/** The text as it was last shown: what is saved is what was read. */
export async function diagnosticsFile(desk: Desk): Promise<string> {
  return shown.get(desk.store) ?? (await diagnostics(desk)).text
}

function versions(desk: Desk): string[] {
  const { node, electron } = process.versions
  return [
    say('version {version}', { version: app.version }),
    say('made {desk}', { desk: utc(desk.now()) }),
    electron
      ? say('desktop window {electron}, Node {node}', { electron, node })
      : say('browser, Node {node}', { node }),
    say('{platform} {release} {arch}, {totalmem} GB of memory', {
      platform: process.platform,
      release: release(),
      arch: process.arch,
      totalmem: Math.round(totalmem() / 1024 ** 3),
    }),
    say('running for {process} min, using {rss}', {
      process: Math.round(process.uptime() / 60),
      rss: megabytes(process.memoryUsage().rss),
    }),
  ]
}

async function database({ store }: Desk): Promise<string[]> {
  const { file } = store.source
  const [sqlite] = await store.read.$queryRaw<{ version: string }[]>`select sqlite_version() as version`
  const [schema] = await store.read.$queryRaw<{ count: bigint; newest: string | null }[]>`
    select count(*) as count, max(migration_name) as newest from _prisma_migrations`
  return [
    say('SQLite {version}', { version: sqlite?.version }),
    say('schema {newest} ({count} migrations)', { newest: schema?.newest, count: schema?.count }),
    say('{file}, its log {sizeOf}', {
      file: megabytes(sizeOf(file)),
      sizeOf: megabytes(sizeOf(`${file}-wal`)),
    }),
    foundDamage(file) === null ? say('no damage found in this run') : say('damage found in this run'),
  ]
}

async function copies(desk: Desk): Promise<string[]> {
  const own = await ownCopies(desk)
  const { place, drill } = readComputer(dirname(desk.store.source.file))
  const newest = own[0]
    ? say(', the newest {madeAt}, {bytes}', { madeAt: utc(own[0].madeAt), bytes: megabytes(own[0].bytes) })
    : ''
  return [
    say('{own} on this computer{newest}', { own: own.length, newest }),
    place === null ? say('no second place') : say('a second place is named'),
    passphraseOf(desk) === null ? say('not locked') : say('locked with a passphrase'),
    drill === null
      ? say('none tried yet')
      : drill.opened
        ? say('tried {at}: opened', { at: utc(drill.at) })
        : say('tried {at}: did not open', { at: utc(drill.at) }),
  ]
}

async function rows(read: Tx): Promise<string[]> {
  const tables = await read.$queryRaw<{ name: string }[]>`
    select name from sqlite_master where type = 'table' and name not glob '[_s]*' order by name`
  const counted: string[] = []
  for (const { name } of tables) {
    const [row] = await read.$queryRawUnsafe<{ count: bigint }[]>(`select count(*) as count from "${name}"`)
    if (row && row.count > 0) counted.push(`${name} ${row.count}`)
  }
  return counted
}

function answers(store: Store): string[] {
  return slowestCalls(store, most).map(
    ([path, { calls, totalMs, slowestMs }]) =>
      `${path} ${calls} ${Math.round(totalMs / calls)} ${Math.round(slowestMs)}`,
  )
}

function faults({ store }: Desk): string[] {
  const kept = keptFaults(dirname(store.source.file), most)
  return kept.length === 0
    ? [say('none')]
    : kept.map(({ at, asked, kind, places }) => [utc(at), asked, kind, ...places].filter(Boolean).join(' | '))
}

const utc = (at: number) => zonedOf(at, 'UTC').toInstant().toString()

const megabytes = (bytes: number) => say('{bytes} MB', { bytes: (bytes / 1024 ** 2).toFixed(1) })

function sizeOf(file: string): number {
  return statSync(file, { throwIfNoEntry: false })?.size ?? 0
}
