import { expect, it } from 'vitest'
import { ownPace, type Pace } from '../../../main/services/desk/beside.ts'
import { packedFiles } from '../../../main/services/leaving/packed.ts'
import { readTables, type TablesRead } from '../../../main/store/tables/readTables.ts'
import { makeDesk, type TestDesk } from '../makeDesk.ts'
import { testShop } from '../testShop.ts'

async function files(read: TablesRead, pace: Pace = ownPace()): Promise<Map<string, string>> {
  const found = new Map<string, string>()
  for await (const { name, parts } of packedFiles({ read, nowAt: 29_604_480, pace })) {
    let text = ''
    for await (const part of parts) text += Buffer.from(part as Uint8Array).toString()
    found.set(name, text)
  }
  return found
}

async function reading<T>(desk: TestDesk, work: (read: TablesRead) => Promise<T>): Promise<T> {
  const read = readTables(desk.store.source.file)
  try {
    return await work(read)
  } finally {
    read.close()
  }
}

it('begins with what to know, and says of each list what it is', async () => {
  const desk = await makeDesk()
  await testShop(desk)
  await reading(desk, async read => {
    const packed = await files(read)
    expect([...packed.keys()].slice(0, 3)).toEqual(['READ ME.txt', 'shop.schema.json', 'shop.json'])
    const told = packed.get('READ ME.txt')!
    expect(told).toContain('\r\n  vehicles.csv  A car on file.\r\n')
    for (const { file, about } of read.tables) {
      expect(about).not.toBe('')
      expect(told).toContain(`  ${file}.csv  ${about}\r\n`)
      expect(packed.has(`tables/${file}.csv`)).toBe(true)
    }
  })
})

it('counts each row twice, and gives all of more than one page', async () => {
  const desk = await makeDesk()
  await testShop(desk)
  await desk.store.transact({ who: 'test', at: 0 }, tx =>
    tx.customer.createMany({ data: Array.from({ length: 250 }, (_, i) => ({ name: `Many ${i}` })) }),
  )
  await reading(desk, async read => {
    const counts = [0]
    const pace: Pace = {
      done: 0,
      total: 0,
      async turn() {
        counts.push(this.done)
        return true
      },
    }
    const packed = await files(read, pace)
    const { customers } = JSON.parse(packed.get('shop.json')!).tables
    const named = customers.filter(({ name }: { name: string }) => name.startsWith('Many '))
    expect(named.map(({ name }: { name: string }) => name)).toEqual(
      Array.from({ length: 250 }, (_, i) => `Many ${i}`),
    )
    expect(packed.get('tables/customers.csv')!.match(/Many \d+/g)).toHaveLength(250)
    const rows = Object.values(JSON.parse(packed.get('shop.json')!).tables).flat().length
    expect(pace.done).toBe(2 * rows)
    expect(Math.max(...counts.slice(1).map((count, i) => count - counts[i]!))).toBe(100)
  })
})

it('ends with an error where it is stopped between two pages, so that half a list is never taken for a whole', async () => {
  const desk = await makeDesk()
  await testShop(desk)
  await reading(desk, async read => {
    await expect(files(read, { done: 0, total: 0, turn: async () => false })).rejects.toThrow('stopped')
  })
})

it('tells money and time as the shop has them, and before there is a shop in some way', async () => {
  const desk = await makeDesk()
  const head = async () =>
    reading(desk, async read => {
      const { tables, ...head } = JSON.parse((await files(read)).get('shop.json')!)
      return head
    })
  expect(await head()).toEqual({ form: 1, madeAt: 29_604_480, zone: 'UTC', currency: 'USD' })
  await testShop(desk)
  const { zone, currency } = await desk.store.read.shop.findFirstOrThrow()
  expect(await head()).toEqual({ form: 1, madeAt: 29_604_480, zone, currency })
})

it('gives each kept file a number and a name that any disk takes', async () => {
  const desk = await makeDesk()
  await desk.store.transact({ who: 'test', at: 0 }, tx =>
    tx.storedFile.createMany({
      data: ['Ärzte/data: sheet?.pdf', 'Ärzte/data: sheet?.pdf'].map((name, i) => ({
        ...{ name, type: 'application/pdf', bytes: Buffer.from(`file ${i}`), size: 6, sha256: `${i}` },
        ...{ at: 1, who: 'Jo' },
      })),
    }),
  )
  await reading(desk, async read => {
    const kept = [...(await files(read))].filter(([name]) => name.startsWith('files/'))
    expect(kept).toEqual([
      ['files/1 Ärzte_data_ sheet_.pdf', 'file 0'],
      ['files/2 Ärzte_data_ sheet_.pdf', 'file 1'],
    ])
  })
})
