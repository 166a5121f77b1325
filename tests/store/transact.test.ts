import { describe, expect, it, vi } from 'vitest'
import type { Save } from '../../main/store/saves.ts'
import { assertFresh, type Tx } from '../../main/store/store.ts'
import { openTestStore, stamp } from './openDatabase.ts'

/** A gate that a test opens when it has looked. */
function gate() {
  let open = () => {}
  const passed = new Promise<void>(resolve => {
    open = resolve
  })
  return { passed, open }
}

describe('the database', () => {
  it('writes ahead, waits for the disk, and minds its links', async () => {
    const { store } = await openTestStore()
    const pragma = (name: string) =>
      store.transact(stamp, async tx => {
        const [row] = await tx.$queryRawUnsafe<Record<string, unknown>[]>(`pragma ${name}`)
        return String(Object.values(row ?? {})[0])
      })
    expect(await pragma('journal_mode')).toBe('wal')
    // 2 is FULL (sqlite.org/pragma.html#pragma_synchronous): a commit survives a power cut.
    expect(await pragma('synchronous')).toBe('2')
    expect(await pragma('foreign_keys')).toBe('1')
  })

  it('takes no write past the audit: what is there for reading refuses it, however it is put', async () => {
    const { store } = await openTestStore()
    const { read } = store
    const vehicles = { create: { label: 'Blue estate' } }
    for (const write of [
      () => read.customer.create({ data: { name: 'Ada' } }),
      () => read.customer.create({ data: { name: 'Ada', vehicles } as never }),
      () => read.customer.updateMany({ data: { name: 'Ada' } }),
      () => read.$executeRaw`insert into "Customer" ("id", "name") values ('x', 'Ada')`,
      () => read.$queryRaw`insert into "Customer" ("id", "name") values ('x', 'Ada') returning "id"`,
      () => read.$transaction(tx => tx.customer.create({ data: { name: 'Ada' } })),
    ])
      await expect(write()).rejects.toThrow(/readonly/)
    expect(await read.customer.count()).toBe(0)
  })
})

describe('an act', () => {
  it('is saved whole with its audit lines', async () => {
    const { store } = await openTestStore()
    const customer = await store.transact(stamp, async (tx, audit) => {
      const made = await tx.customer.create({ data: { name: 'Ada' } })
      audit({ act: 'made', entity: 'customer', entityId: made.id, detail: { name: 'Ada' } })
      audit({ act: 'looked', entity: 'customer', entityId: made.id })
      return made
    })
    expect(await store.read.customer.findMany()).toEqual([customer])
    expect(await store.read.auditLine.findMany({ orderBy: { act: 'desc' } })).toMatchObject([
      { ...stamp, act: 'made', entity: 'customer', entityId: customer.id, detail: { name: 'Ada' } },
      { ...stamp, act: 'looked', entity: 'customer', entityId: customer.id, detail: {} },
    ])
  })

  it('that fails leaves nothing, not even its audit line, and nobody is told', async () => {
    const { store } = await openTestStore()
    const told = vi.fn()
    store.onCommit(told)
    const failing = store.transact(stamp, async (tx, audit) => {
      await tx.customer.create({ data: { name: 'Ada' } })
      audit({ act: 'made', entity: 'customer', entityId: 'x' })
      throw new Error('on second thoughts')
    })
    await expect(failing).rejects.toThrow('on second thoughts')
    expect(await store.read.customer.count()).toBe(0)
    expect(await store.read.auditLine.count()).toBe(0)
    expect(told).not.toHaveBeenCalled()
    // And the next one is served.
    await store.transact(stamp, tx => tx.customer.create({ data: { name: 'Bea' } }))
    expect(await store.read.customer.count()).toBe(1)
  })

  it('that breaks a link between rows is refused whole', async () => {
    const { store } = await openTestStore()
    const astray = store.transact(stamp, async tx => {
      await tx.customer.create({ data: { name: 'Ada' } })
      await tx.vehicle.create({ data: { customerId: 'nobody', plate: 'P', sizeClass: 'small' } })
    })
    await expect(astray).rejects.toThrow()
    expect(await store.read.customer.count()).toBe(0)
  })

  it('is not seen by a reader until it is finished', async () => {
    const { store } = await openTestStore()
    const written = gate()
    const looked = gate()
    const act = store.transact(stamp, async tx => {
      await tx.customer.create({ data: { name: 'Ada' } })
      written.open()
      await looked.passed
    })
    await written.passed
    expect(await store.read.customer.count()).toBe(0)
    looked.open()
    await act
    expect(await store.read.customer.count()).toBe(1)
  })

  it('is told of by what its audit lines name, until a listener stops', async () => {
    const { store } = await openTestStore()
    const told = vi.fn()
    const stop = store.onCommit(told)
    const touch = (...entities: string[]) =>
      store.transact(stamp, async (_tx, audit) => {
        for (const entity of entities) audit({ act: 'touched', entity, entityId: '1' })
      })
    await touch('job', 'bay', 'job')
    await touch()
    stop()
    await touch('job')
    const line = (entity: string) => ({ act: 'touched', entity, entityId: '1' })
    expect(told.mock.calls.map(([touched]) => touched)).toEqual([[line('job'), line('bay'), line('job')]])
  })

  it('names the tables it changed, those kept by triggers too, and none where nobody followed or files were changed', async () => {
    const { store } = await openTestStore()
    const saves: Save[] = []
    store.onCommit((_, save) => saves.push(save))
    const audited = (work: (tx: Tx) => Promise<unknown>, followed?: false, entity = 'customer') =>
      store.transact({ ...stamp, ...(followed === false && { followed }) }, async (tx, audit) => {
        audit({ act: 'touched', entity, entityId: '1' })
        await work(tx)
      })
    const customer = { id: '1', name: 'Ines Vale' }
    await audited(tx => tx.customer.create({ data: customer }))
    await audited(tx => tx.customer.update({ where: { id: '1' }, data: { version: { increment: 1 } } }))
    await audited(tx => tx.customer.create({ data: { ...customer, id: '2' } }), false)
    await audited(async () => {})
    await audited(async () => {}, undefined, 'backups')
    expect(saves.map(save => save.number)).toEqual([1, 2, 3, 4, 5])
    const [made, edited, unfollowed, note, inFiles] = saves.map(save => save.tables)
    // Whether a plan is in use hangs on its owner.
    const named = ['Act', 'ActRow', 'AuditLine', 'AuditLine customer', 'Customer', 'PlanDue']
    expect([...made!].sort()).toEqual(named)
    expect([...edited!].sort()).toEqual(named)
    expect([...note!].sort()).toEqual(['Act', 'ActRow', 'AuditLine', 'AuditLine customer'])
    expect([unfollowed, inFiles]).toEqual([null, null])
  })
})

describe('acts at the same time', () => {
  it('are served one after another, so none counts from what another is changing', async () => {
    const { store } = await openTestStore()
    await store.transact(stamp, tx => tx.customer.create({ data: { id: 'c', name: '0' } }))
    const addOne = () =>
      store.transact(stamp, async tx => {
        const { name } = await tx.customer.findUniqueOrThrow({ where: { id: 'c' } })
        // Long enough for the others to come in between, if they could.
        await new Promise(resolve => setTimeout(resolve, 2))
        await tx.customer.update({ where: { id: 'c' }, data: { name: String(Number(name) + 1) } })
      })
    await Promise.all(Array.from({ length: 25 }, addOne))
    expect((await store.read.customer.findUniqueOrThrow({ where: { id: 'c' } })).name).toBe('25')
  })

  it('from two edits of the same version let one through and refuse the other', async () => {
    const { store } = await openTestStore()
    await store.transact(stamp, tx => tx.customer.create({ data: { id: 'c', name: 'Ada' } }))
    const rename = (name: string) =>
      store.transact(stamp, async (tx, audit) => {
        const { count } = await tx.customer.updateMany({
          where: { id: 'c', version: 1 },
          data: { name, version: { increment: 1 } },
        })
        assertFresh(count, 'customer', 'c')
        audit({ act: 'renamed', entity: 'customer', entityId: 'c' })
      })
    const outcomes = await Promise.allSettled([rename('Bea'), rename('Cid')])
    expect(outcomes.map(({ status }) => status).sort()).toEqual(['fulfilled', 'rejected'])
    expect(outcomes.find(({ status }) => status === 'rejected')).toMatchObject({
      reason: { code: 'stale', field: 'customer', value: 'c' },
    })
    expect(await store.read.auditLine.count()).toBe(1)
    expect((await store.read.customer.findUniqueOrThrow({ where: { id: 'c' } })).version).toBe(2)
  })
})

describe('assertFresh', () => {
  it('passes what was touched and refuses what was not, saying what to do', () => {
    expect(() => assertFresh(1, 'job', 'j')).not.toThrow()
    expect(() => assertFresh(0, 'job', 'j')).toThrow(
      /Somebody else changed this job meanwhile: look at it again/,
    )
  })
})
