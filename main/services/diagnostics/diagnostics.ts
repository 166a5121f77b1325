/** What the owner can send to whoever looks after the app: no name, number, address, price, nor anything typed. */
import { statSync } from 'node:fs'
import { release, totalmem } from 'node:os'
import { dirname } from 'node:path'
import app from '../../../package.json' with { type: 'json' }
import { zonedOf } from '../../domain/calendar/index.ts'
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
    ['Database', await database(desk)],
    ['Copies', await copies(desk)],
    ['Rows', await rows(desk.store.read)],
    ['Slowest answers since the start (calls, mean ms, worst ms)', answers(desk.store)],
    ['Last errors (UTC)', faults(desk)],
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
    `version ${app.version}`,
    `made ${utc(desk.now())}`,
    electron ? `desktop window ${electron}, Node ${node}` : `browser, Node ${node}`,
    `${process.platform} ${release()} ${process.arch}, ${Math.round(totalmem() / 1024 ** 3)} GB of memory`,
    `running for ${Math.round(process.uptime() / 60)} min, using ${megabytes(process.memoryUsage().rss)}`,
  ]
}

async function database({ store }: Desk): Promise<string[]> {
  const { file } = store.source
  const [sqlite] = await store.read.$queryRaw<{ version: string }[]>`select sqlite_version() as version`
  const [schema] = await store.read.$queryRaw<{ count: bigint; newest: string | null }[]>`
    select count(*) as count, max(migration_name) as newest from _prisma_migrations`
  return [
    `SQLite ${sqlite?.version}`,
    `schema ${schema?.newest} (${schema?.count} migrations)`,
    `${megabytes(sizeOf(file))}, its log ${megabytes(sizeOf(`${file}-wal`))}`,
    foundDamage(file) === null ? 'no damage found in this run' : 'damage found in this run',
  ]
}

async function copies(desk: Desk): Promise<string[]> {
  const own = await ownCopies(desk)
  const { place, drill } = readComputer(dirname(desk.store.source.file))
  const newest = own[0] ? `, the newest ${utc(own[0].madeAt)}, ${megabytes(own[0].bytes)}` : ''
  return [
    `${own.length} on this computer${newest}`,
    place === null ? 'no second place' : 'a second place is named',
    passphraseOf(desk) === null ? 'not locked' : 'locked with a passphrase',
    drill === null ? 'none tried yet' : `tried ${utc(drill.at)}: ${drill.opened ? 'opened' : 'did not open'}`,
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
    ? ['none']
    : kept.map(({ at, asked, kind, places }) => [utc(at), asked, kind, ...places].filter(Boolean).join(' | '))
}

const utc = (at: number) => zonedOf(at, 'UTC').toInstant().toString()

const megabytes = (bytes: number) => `${(bytes / 1024 ** 2).toFixed(1)} MB`

function sizeOf(file: string): number {
  return statSync(file, { throwIfNoEntry: false })?.size ?? 0
}
