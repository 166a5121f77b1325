/** Taking in a list of 20,000 customers with 5 % bad rows: how long it takes, and how deaf the desk is meanwhile. */
import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { setTimeout as wait } from 'node:timers/promises'
import { migrationsDir } from '../../../main/hosts/build.ts'
import type { Desk } from '../../../main/services/desk/desk.ts'
import { beginCheck, beginTake, importStands } from '../../../main/services/imports/importing.ts'
import { openFile } from '../../../main/services/imports/opened.ts'
import { undoImport } from '../../../main/services/imports/taken.ts'
import { saveCustomer } from '../../../main/services/records/customers.ts'
import { setUpShop } from '../../../main/services/setUp/shopSetUp.ts'
import { openStore } from '../../../main/store/store.ts'
import { importingEnds } from '../../services/imports/ends.ts'
import type { Figure } from '../run.ts'
import { customerList } from './lists.ts'

const rows = 20_000

const figure = (name: string, value: number, unit: string, goal?: string, met?: boolean): Figure => ({
  bench: 'intake',
  case: name,
  value: Math.round(value),
  unit,
  goal: goal ?? null,
  met: met ?? null,
})

async function timed(work: () => Promise<unknown>): Promise<number> {
  const began = performance.now()
  await work()
  return performance.now() - began
}

/** The longest a reader and a writer waited for their turn while the work went on. */
async function deafness(desk: Desk, work: Promise<unknown>): Promise<{ read: number; save: number }> {
  let going = true
  const worst = { read: 0, save: 0 }
  const reader = (async () => {
    while (going) {
      worst.read = Math.max(worst.read, await timed(() => desk.store.read.shop.findFirst()))
      await wait(5)
    }
  })()
  // Whoever saves anything at all, and now and then a customer, after whom the list is looked through again.
  const writer = (async () => {
    while (going) {
      worst.save = Math.max(
        worst.save,
        await timed(() => desk.store.transact({ who: 'bench', at: desk.now() }, async () => {})),
      )
      await wait(10)
    }
  })()
  const caller = (async () => {
    for (let i = 0; going; i++) {
      const name = `Walk-in ${String.fromCharCode(97 + (i % 26))}${i}`
      await saveCustomer(desk, { name, phone: '(212) 555-0100' })
      await wait(1_500)
    }
  })()
  await work
  going = false
  await Promise.all([reader, writer, caller])
  return worst
}

export async function* importFigures(): AsyncGenerator<Figure> {
  const dir = mkdtempSync(join(tmpdir(), 'lustrum-bench-'))
  const store = await openStore(join(dir, 'lustrum.db'), { dir: migrationsDir })
  const desk: Desk = { store, who: 'bench', now: () => 29_604_000 }
  try {
    await setUpShop(desk, {
      name: 'Ashdown Paint Care',
      zone: 'America/New_York',
      currency: 'USD',
      units: 'us',
      country: 'US',
      weekly: [{ weekday: 1, from: 480, to: 1080 }],
      bays: [{ name: 'Bay', capabilities: ['wet'] }],
      crew: [{ name: 'Mika', skills: ['wash'] }],
      starters: false,
    })
    const base64 = Buffer.from(customerList(rows)).toString('base64')
    const began = performance.now()
    const opened = await openFile(desk, { kind: 'customers', fileName: 'customers.csv', base64 })
    yield figure('read a list of 20,000 rows', performance.now() - began, 'ms')
    const { fileId, reading } = opened
    yield figure(
      'look 20,000 rows through',
      await timed(async () => {
        beginCheck(desk, { fileId, reading })
        await importingEnds(desk)
      }),
      'ms',
    )
    beginTake(desk, { fileId, reading })
    const taking = timed(() => importingEnds(desk))
    const deaf = await deafness(desk, taking)
    const took = await taking
    const { report, failed } = importStands(desk)
    if (!report?.importId) throw new Error(`not taken in: ${failed}`)
    yield figure('rows taken in', report.added, 'rows', '19,000', report.added === rows * 0.95)
    yield figure('bad rows told', report.bad, 'rows', '1,000', report.bad === rows * 0.05)
    yield figure('take in 20,000 rows, 5 % bad', took, 'ms', 'under 10,000', took < 10_000)
    yield figure('longest wait of a reader meanwhile', deaf.read, 'ms', 'under 300', deaf.read < 300)
    yield figure('longest wait of a save meanwhile', deaf.save, 'ms', 'under 1,000', deaf.save < 1_000)
    const undone = await timed(() => undoImport(desk, { id: report.importId!, accepted: true }))
    yield figure('take it out again', undone, 'ms', 'under 10,000', undone < 10_000)
  } finally {
    await store.close()
    rmSync(dir, { recursive: true, force: true })
  }
}
