import { expect, it } from 'vitest'
import { keptUntilSaved } from '../../main/store/kept.ts'
import type { Tx } from '../../main/store/store.ts'
import { openTestStore, stamp } from './openDatabase.ts'

/** Counts the customers, and how often it was asked to. */
function counting() {
  let reads = 0
  const count = keptUntilSaved(
    async (tx: Tx, name: string) => {
      reads++
      return tx.customer.count({ where: { name } })
    },
    name => name,
  )
  return { count, reads: () => reads }
}

it('is read once until something is saved, and anew after that', async () => {
  const { store } = await openTestStore()
  const { count, reads } = counting()
  expect(await Promise.all([count(store.read, 'Aalto'), count(store.read, 'Aalto')])).toEqual([0, 0])
  expect(reads()).toBe(1)
  // Without a line in the audit, as a sensor saves.
  await store.transact(stamp, tx => tx.customer.create({ data: { name: 'Aalto' } }))
  expect(await count(store.read, 'Aalto')).toBe(1)
  expect(await count(store.read, 'Aalto')).toBe(1)
  expect(reads()).toBe(2)
})

it('tells apart what it is asked for, and keeps a few of them', async () => {
  const { store } = await openTestStore()
  const { count, reads } = counting()
  const names = Array.from({ length: 9 }, (_, i) => `Customer ${i}`)
  for (const name of names) await count(store.read, name)
  expect(reads()).toBe(9)
  await count(store.read, names[8]!)
  await count(store.read, names[1]!)
  expect(reads()).toBe(9)
  await count(store.read, names[0]!)
  expect(reads()).toBe(10)
})

it('always reads within an act, which sees its own writes, and keeps nothing of it', async () => {
  const { store } = await openTestStore()
  const { count, reads } = counting()
  await count(store.read, 'Aalto')
  const failing = store.transact(stamp, async tx => {
    await tx.customer.create({ data: { name: 'Aalto' } })
    expect(await count(tx, 'Aalto')).toBe(1)
    expect(await count(store.read, 'Aalto')).toBe(0)
    throw new Error('not after all')
  })
  await expect(failing).rejects.toThrow('not after all')
  expect(await count(store.read, 'Aalto')).toBe(0)
  expect(reads()).toBe(3)
})

it('does not keep a read that failed, nor one that another database was asked for', async () => {
  const { store } = await openTestStore()
  const { store: other } = await openTestStore()
  let fail = true
  const count = keptUntilSaved(async (tx: Tx) => {
    if (fail) throw new Error('gone')
    return tx.customer.count()
  })
  await expect(count(store.read)).rejects.toThrow('gone')
  fail = false
  expect(await count(store.read)).toBe(0)
  await other.transact(stamp, tx => tx.customer.create({ data: { name: 'Aalto' } }))
  expect(await count(other.read)).toBe(1)
  expect(await count(store.read)).toBe(0)
})

it('asked for while something is being saved, is read anew once it is', async () => {
  const { store } = await openTestStore()
  const { count } = counting()
  await store.transact(stamp, async tx => {
    await tx.customer.create({ data: { name: 'Aalto' } })
    expect(await count(store.read, 'Aalto')).toBe(0)
  })
  expect(await count(store.read, 'Aalto')).toBe(1)
})
