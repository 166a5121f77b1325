import { expect, it } from 'vitest'
import type { Tx } from '../../main/store/store.ts'
import { openTestStore, stamp } from './openDatabase.ts'

const line = { who: 'Jo', at: 5, act: 'added', entity: 'customer', entityId: 'c', detail: { name: 'Edda' } }
/** What the client makes of a trigger's word. */
const refused = /constraint violated/
const erasure = { customerId: 'c', at: 6, who: 'Jo' }

async function shopWithALine() {
  const { store } = await openTestStore()
  const run = <T>(work: (tx: Tx) => Promise<T>) => store.transact(stamp, work)
  const { id } = await run(tx => tx.auditLine.create({ data: line }))
  return { store, run, change: (tx: Tx, data: object) => tx.auditLine.update({ where: { id }, data }) }
}

it('an audit line is never changed or deleted', async () => {
  const { store, run, change } = await shopWithALine()
  await expect(run(tx => change(tx, { detail: {} }))).rejects.toThrow(refused)
  await expect(run(tx => tx.auditLine.deleteMany())).rejects.toThrow(refused)
  expect(await store.read.auditLine.findMany()).toMatchObject([line])
})

it('but for its words while an erasure is not done, and for nothing else of it even then', async () => {
  const { store, run, change } = await shopWithALine()
  for (const data of [{ at: 6 }, { who: 'Al' }, { act: 'changed' }, { entity: 'job' }])
    await expect(
      run(async tx => {
        await tx.erasure.create({ data: erasure })
        await change(tx, data)
      }),
    ).rejects.toThrow(refused)
  await run(async tx => {
    await tx.erasure.create({ data: erasure })
    await change(tx, { detail: { name: 'erased person' } })
    await tx.erasure.update({ where: { customerId: 'c' }, data: { done: true } })
  })
  expect(await store.read.auditLine.findMany()).toMatchObject([
    { ...line, detail: { name: 'erased person' } },
  ])
  await expect(run(tx => change(tx, { detail: {} }))).rejects.toThrow(refused)
})

it('an erasure that is done is never opened again or forgotten', async () => {
  const { run } = await shopWithALine()
  await run(tx => tx.erasure.create({ data: { ...erasure, done: true } }))
  const where = { customerId: 'c' }
  await expect(run(tx => tx.erasure.update({ where, data: { done: false } }))).rejects.toThrow(refused)
  await expect(run(tx => tx.erasure.delete({ where }))).rejects.toThrow(refused)
})

it('an open erasure changes no figure of the ledger', async () => {
  const { store, run } = await shopWithALine()
  const move = await run(async tx => {
    const product = await tx.product.create({ data: { name: 'Foam', kind: 'wash' } })
    const lot = { number: 1, productId: product.id, receivedOn: '2026-04-15' }
    const { id: lotId } = await tx.lot.create({ data: lot })
    const data = { lotId, productId: product.id, kind: 'receipt', centi: 100, at: 5, by: 'Jo', why: 'Edda’s' }
    return tx.stockMove.create({ data })
  })
  const changed = (data: object) =>
    run(async tx => {
      await tx.erasure.create({ data: { ...erasure, customerId: JSON.stringify(data) } })
      await tx.stockMove.update({ where: { seq: move.seq }, data })
      await tx.erasure.updateMany({ data: { done: true } })
    })
  for (const data of [{ centi: 200 }, { at: 6 }, { by: 'Al' }, { costMinor: 3 }, { jobId: 'j' }])
    await expect(changed(data)).rejects.toThrow(refused)
  await changed({ why: 'erased person’s' })
  expect(await store.read.stockMove.findMany()).toEqual([{ ...move, why: 'erased person’s' }])
})
