import { copyFileSync, existsSync, mkdirSync, mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { dirname, join } from 'node:path'
import { migrationsDir } from '../../main/hosts/build.ts'
import type { Desk } from '../../main/services/desk/desk.ts'
import { openStore, type Store } from '../../main/store/store.ts'
import { dyingStore } from '../services/dyingStore.ts'
import type { TestDesk } from '../services/makeDesk.ts'
import { shelfShop } from '../services/shelf/shelfShop.ts'
import type { Ids } from './act.ts'
import type { ShopState } from './shopModel.ts'

/** What a killed process is told in its place. */
export const killed = { code: 'killed' }

/** The app on a real file that can be killed at any write, with the ids of the rows that the model knows by number. */
export class RealShop {
  readonly ids: Ids
  #store: Store
  #nowAt: number
  readonly #dir = mkdtempSync(join(tmpdir(), 'lustrum-model-'))
  #lives = 0
  #linesBefore = 0

  constructor(store: Store, ids: Ids, nowAt: number) {
    this.#store = store
    this.ids = ids
    this.#nowAt = nowAt
  }

  /** On the file of `template`, which stays as it is. */
  static async begin(template: string, shop: Ids['shop'], nowAt: number): Promise<RealShop> {
    const dir = mkdtempSync(join(tmpdir(), 'lustrum-model-'))
    const file = join(dir, 'lustrum.db')
    copyFileSync(template, file)
    const store = await openStore(file, { dir: migrationsDir })
    const real = new RealShop(store, { customers: [], cars: [], jobs: [], bottles: [], shop }, nowAt)
    real.#linesBefore = await real.#lines()
    return real
  }

  desk(who: string, store = this.#store): Desk {
    return { store, who, now: () => this.#nowAt }
  }

  wait(minutes: number): void {
    this.#nowAt += minutes
  }

  /** Does something while the process is killed before its n-th write; a commit counts as one. */
  async killedAt(write: number, work: (desk: Desk) => Promise<unknown>): Promise<void> {
    let left: string | null = null
    const dying = dyingStore(this.#store, write, () => {
      left = this.#leave()
      throw killed
    })
    try {
      await work(this.desk('front desk', dying.store))
    } finally {
      if (left !== null) await this.#openAgain(left)
    }
  }

  /** The process is killed between two acts. */
  killedNow(): Promise<void> {
    return this.#openAgain(this.#leave())
  }

  async state(): Promise<ShopState> {
    const { read } = this.#store
    const { ids } = this
    const inOrder = <R extends { id: string }>(rows: R[], of: string[]) =>
      of.map(id => rows.find(row => row.id === id)!)
    const lots = await read.stockMove.groupBy({ by: ['lotId'], _sum: { centi: true } })
    return {
      customers: inOrder(await read.customer.findMany(), ids.customers).map(
        ({ name, version, archivedAt }) => ({ name, version, archived: archivedAt !== null }),
      ),
      cars: inOrder(await read.vehicle.findMany(), ids.cars).map(({ customerId, version, archivedAt }) => ({
        customer: ids.customers.indexOf(customerId),
        version,
        archived: archivedAt !== null,
      })),
      jobs: inOrder(
        await read.job.findMany({ include: { steps: { orderBy: { position: 'asc' } } } }),
        ids.jobs,
      ).map(({ vehicleId, version, status, heldUntilAt, arrivedAt, leftAt, steps }) => ({
        car: ids.cars.indexOf(vehicleId),
        version,
        status: status as ShopState['jobs'][number]['status'],
        heldUntilAt,
        arrivedAt,
        leftAt,
        steps: steps.map(step => ({ beganAt: step.actualStartAt, endedAt: step.actualEndAt })),
      })),
      bottles: ids.bottles.map(id => lots.find(lot => lot.lotId === id)?._sum.centi ?? 0),
      lines: (await this.#lines()) - this.#linesBefore,
    }
  }

  async close(): Promise<void> {
    await this.#store.close()
    rmSync(dirname(this.#store.source.file), { recursive: true, force: true })
    rmSync(this.#dir, { recursive: true, force: true })
  }

  #lines(): Promise<number> {
    const entity = { in: ['customer', 'vehicle', 'job', 'stock'] }
    return this.#store.read.auditLine.count({ where: { entity } })
  }

  /** What lies on the disk at this moment, which is what the next start finds. */
  #leave(): string {
    const dir = join(this.#dir, String(++this.#lives))
    mkdirSync(dir)
    const left = join(dir, 'lustrum.db')
    for (const end of ['', '-wal'])
      if (existsSync(this.#store.source.file + end)) copyFileSync(this.#store.source.file + end, left + end)
    return left
  }

  async #openAgain(left: string): Promise<void> {
    await this.#store.close()
    this.#store = await openStore(left, { dir: migrationsDir })
  }
}

/** Sets up the shop that every game begins with. */
export async function beginning(desk: TestDesk): Promise<Ids['shop']> {
  const { treatments, coating, sizes } = await shelfShop(desk)
  return { treatments, coating, size: sizes.coating }
}
