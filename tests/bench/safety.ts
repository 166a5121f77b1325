/** What can happen to a shop's data, played out: what was lost of what was answered, and whether each start spoke in words. */
import { copyFileSync, mkdtempSync, rmSync, statSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import Database from 'better-sqlite3'
import { Refusal } from '../../main/domain/refusal.ts'
import { migrationsDir } from '../../main/hosts/build.ts'
import { claimDataFolder, databaseFile } from '../../main/hosts/dataFolder.ts'
import { openShop } from '../../main/hosts/openShop.ts'
import { copiesStanding } from '../../main/services/backup/standing.ts'
import { fillDemo } from '../../main/services/demo/index.ts'
import type { Desk } from '../../main/services/desk/desk.ts'
import { makeCopy } from '../../main/store/backup/copies.ts'
import { readOver } from '../../main/store/backup/readOver.ts'
import { migrate } from '../../main/store/migrate.ts'
import { canBeCramped, runCramped } from '../store/disasters/crampedRun.ts'
import { damages } from '../store/disasters/damaged.ts'
import { type Losses, noLosses, tally, writeUntilKilled } from '../store/disasters/killed.ts'
import { cutPower, cutPowerInCheckpoint, recordActs } from '../store/disasters/powerCut.ts'
import { seeded } from './bookedShop.ts'
import type { Figure } from './run.ts'
import { bigShop } from './safety/bigShop.ts'

/** LUSTRUM_SAFETY=long plays as many as the promise names; else what takes a minute. */
const long = process.env.LUSTRUM_SAFETY === 'long'
const kills = long ? 200 : 12
const acts = long ? 101 : 40
const cutsAnAct = 10
/** Room left on the disk, in kilobytes. */
const rooms = Array.from({ length: long ? 50 : 3 }, (_, i) => 200 + Math.floor((i * 900) / (long ? 49 : 2)))
const damagedOfEachKind = long ? 9 : 1
const flushed = 200

const random = seeded(20_261_128)

function none(what: string, value: number, unit: string): Figure {
  return { bench: 'safety', case: what, value, unit, goal: '0', met: value === 0 }
}

function* losses(what: string, { lost, half, unreadable }: Losses): Generator<Figure> {
  yield none(`${what}: acts that were answered and are lost`, lost, 'acts')
  yield none(`${what}: acts half there`, half, 'acts')
  yield none(`${what}: databases that cannot be read`, unreadable, 'databases')
}

function sum(a: Losses, b: Losses): Losses {
  return { lost: a.lost + b.lost, half: a.half + b.half, unreadable: a.unreadable + b.unreadable }
}

async function killed(dir: string): Promise<Losses> {
  const file = join(dir, 'killed.db')
  await migrate(file, { dir: migrationsDir })
  let all = noLosses
  for (let i = 0, next = 1; i < kills; i++) {
    const answered = await writeUntilKilled(file, next, random() * 300)
    all = sum(all, tally(file, answered))
    const database = new Database(file, { readonly: true })
    next = (database.prepare('select count(*) from Customer').pluck().get() as number) + 1
    database.close()
  }
  return all
}

async function powerCuts(dir: string): Promise<{ log: Losses; checkpoint: Losses }> {
  const recorded = join(dir, 'recorded.db')
  await migrate(recorded, { dir: migrationsDir })
  const answered = await recordActs(recorded, acts)
  let [log, checkpoint] = [noLosses, noLosses]
  const file = join(dir, 'cut.db')
  for (const [i, before] of answered.slice(0, -1).entries()) {
    const after = answered[i + 1] ?? before
    for (let cut = 0; cut < cutsAnAct; cut++) {
      cutPower(file, before, after, random)
      log = sum(log, tally(file, before.act))
      cutPowerInCheckpoint(file, before, random)
      checkpoint = sum(checkpoint, tally(file, before.act))
    }
  }
  return { log, checkpoint }
}

async function fullDisks(dir: string): Promise<{ losses: Losses; speechless: number }> {
  let all = noLosses
  let speechless = 0
  const empty = join(dir, 'empty.db')
  await migrate(empty, { dir: migrationsDir })
  const size = Math.ceil(statSync(empty).size / 1024)
  const says = (words: string) => {
    if (!/^Refusal: .+\.\)?/.test(words)) speechless++
  }
  for (const room of rooms) {
    const file = join(dir, `full-${room}.db`)
    copyFileSync(empty, file)
    const { answered, words } = runCramped('write', file, size + room)
    says(words)
    all = sum(all, tally(file, answered))
  }
  says(runCramped('copy', empty, 100).words)
  return { losses: all, speechless }
}

async function start(
  dataDir: string,
  restore: string | null,
): Promise<{ desk: Desk; close(): Promise<void> }> {
  const claim = claimDataFolder(dataDir, 'web')
  if (!claim) throw new Error('The folder is taken.')
  const desk = await openShop(claim, {
    dataDir,
    demo: false,
    restore,
    migrations: { dir: migrationsDir },
    say: () => {},
  })
  return {
    desk,
    async close() {
      await desk.store.close()
      claim.release()
    },
  }
}

/** Each kind of damage on a shop of its own: whether it was said, and whether the copy brings everything back. */
async function damagedFiles(dir: string): Promise<{ speechless: string[]; notBack: string[] }> {
  const [speechless, notBack]: [string[], string[]] = [[], []]
  const cases = Object.entries(damages).flatMap(one => new Array<typeof one>(damagedOfEachKind).fill(one))
  for (const [i, [kind, spoil]] of cases.entries()) {
    const dataDir = join(dir, `${kind.replaceAll(' ', '-')}-${i}`)
    const file = databaseFile(dataDir)
    const first = await start(dataDir, null)
    await fillDemo(first.desk)
    const copy = await makeCopy(file, { at: first.desk.now(), passphrase: null })
    const lines = await first.desk.store.read.auditLine.count()
    await first.close()
    spoil(file, random())
    const words = await start(dataDir, null).then(
      async opened => {
        await readOver(file)
        const { warnings } = await copiesStanding(opened.desk).catch(error => {
          throw opened.desk.store.explain(error)
        })
        await opened.close()
        return warnings.find(({ about }) => about === 'data')?.words
      },
      (error: unknown) => (error instanceof Refusal ? error.message : undefined),
    )
    if (!words) speechless.push(kind)
    const back = await start(dataDir, copy.path)
    // What a restore itself writes down is one line more.
    if ((await back.desk.store.read.auditLine.count()) !== lines + 1) notBack.push(kind)
    await back.close()
  }
  return { speechless, notBack }
}

/** What waiting for the disk costs an act: milliseconds a commit, flushed and not. */
function commitMs(dir: string, synchronous: 'full' | 'normal'): number {
  const database = new Database(join(dir, `${synchronous}.db`))
  database.pragma('journal_mode = WAL')
  database.pragma(`synchronous = ${synchronous}`)
  database.exec('create table T (a text)')
  const insert = database.prepare('insert into T values (?)')
  const began = performance.now()
  for (let i = 0; i < flushed; i++) insert.run('x'.repeat(500))
  const took = (performance.now() - began) / flushed
  database.close()
  return Math.round(took * 1000) / 1000
}

export async function* run(): AsyncGenerator<Figure> {
  const dir = mkdtempSync(join(tmpdir(), 'lustrum-safety-'))
  try {
    yield* losses(`${kills} kills at random instants under load`, await killed(dir))
    const cuts = await powerCuts(dir)
    const count = (acts - 1) * cutsAnAct
    yield* losses(`${count} power cuts while the log is written`, cuts.log)
    yield* losses(`${count} power cuts in a checkpoint`, cuts.checkpoint)
    if (canBeCramped) {
      const full = await fullDisks(dir)
      yield* losses(`${rooms.length} full disks`, full.losses)
      yield none('full disks: refusals not in words', full.speechless, 'refusals')
    }
    const { speechless, notBack } = await damagedFiles(dir)
    yield none(
      `${Object.keys(damages).length * damagedOfEachKind} damaged files of ${Object.keys(damages).length} kinds: starts not in words`,
      speechless.length,
      'starts',
    )
    yield none('damaged files: shops not whole after the restore', notBack.length, 'shops')
    yield* bigShop(dir)
    for (const synchronous of ['full', 'normal'] as const)
      yield {
        bench: 'safety',
        case: `a commit with synchronous = ${synchronous}`,
        value: commitMs(dir, synchronous),
        unit: 'ms',
        goal: null,
        met: null,
      }
  } finally {
    rmSync(dir, { recursive: true, force: true })
  }
}
