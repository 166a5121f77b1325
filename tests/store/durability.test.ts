import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { checkIntegrity } from '../../main/store/integrity.ts'
import { writeUntilKilled } from './disasters/killed.ts'
import { makeFolder, openTestStore } from './openDatabase.ts'

describe('a process killed while it writes', { timeout: 120_000 }, () => {
  it('leaves each act whole or not at all, and every act it was answered', async () => {
    const dir = makeFolder()
    const file = join(dir, 'lustrum.db')
    let next = 1
    // At different moments, so that the kill falls into different parts of a write.
    for (const patience of [0, 7, 23, 51]) {
      const answered = await writeUntilKilled(file, next, patience)
      expect(answered).toBeGreaterThanOrEqual(next)
      checkIntegrity(file)
      const { store } = await openTestStore(dir)
      const customers = await store.read.customer.findMany({ include: { vehicles: true } })
      const lines = await store.read.auditLine.findMany()
      await store.close()
      const numbers = customers
        .map(({ name }) => Number(name.slice('Customer '.length)))
        .sort((a, b) => a - b)
      // One more than was answered may have been written: its answer was on the way.
      expect([answered, answered + 1]).toContain(numbers.length)
      expect(numbers).toEqual(Array.from(numbers, (_, index) => index + 1))
      for (const { name, vehicles } of customers)
        expect(vehicles.map(({ plate }) => plate)).toEqual([`P${name.slice('Customer '.length)}`])
      expect(lines.map(({ at }) => at).sort((a, b) => a - b)).toEqual(numbers)
      next = numbers.length + 1
    }
  })

  it('cannot stop another from reading and writing on', async () => {
    const dir = makeFolder()
    const { store, file } = await openTestStore(dir)
    const answered = await writeUntilKilled(file, 1, 20)
    const before = await store.read.customer.count()
    expect(before).toBeGreaterThanOrEqual(answered)
    await store.transact({ who: 'tester', at: 1 }, tx => tx.customer.create({ data: { name: 'After' } }))
    expect(await store.read.customer.count()).toBe(before + 1)
  })
})
