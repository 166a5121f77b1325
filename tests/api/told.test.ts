/** Windows ask again what a save has changed, and nothing else. */
import { mkdirSync } from 'node:fs'
import { join } from 'node:path'
import { expect, it } from 'vitest'
import { createApp } from '../../main/api/app.ts'
import type { Desk } from '../../main/services/desk/desk.ts'
import { findShop } from '../../main/services/desk/shopView.ts'
import { noteAnswer, type Told, toldOf } from '../../main/services/desk/told.ts'
import { queryInputs, queryPaths } from './queryInputs.ts'
import { yearsShop } from './yearsShop.ts'

/** These tell of the computer or of work under way, which no save changes. */
const ofTheComputer = ['system.diagnostics', 'backups.standing', 'backups.list', 'leaving.standing']

async function window() {
  const { dir, desk } = await yearsShop()
  const rendererDir = join(dir, 'page')
  mkdirSync(rendererDir)
  const app = createApp({ desk, rendererDir })
  const inputs = await queryInputs(desk)
  const ask = async (path: string) => {
    const input = inputs[path]
    const tail = input === undefined ? '' : `?input=${encodeURIComponent(JSON.stringify(input))}`
    return (await app.request(`/trpc/${path}${tail}`)).text()
  }
  const save = async (path: string, input: unknown) => {
    const heard: Told[] = []
    const stop = desk.store.onCommit((_, save) => heard.push(toldOf(desk.store, save)))
    const answer = await app.request(`/trpc/${path}`, {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify(input),
    })
    stop()
    expect(answer.status, `${path}: ${await answer.clone().text()}`).toBe(200)
    return { heard, own: answer.headers.get('x-lustrum-saves') }
  }
  return { desk, ask, save }
}

/** Saves of every room of the shop, each on the rows as they are by then. */
async function* saves({ store }: Desk): AsyncGenerator<[path: string, input: unknown]> {
  const tx = store.read
  const customer = await tx.customer.findFirstOrThrow({ where: { jobs: { some: { status: 'booked' } } } })
  const { id, version, name } = customer
  yield ['customers.save', { id, version, name: `${name} the elder` }]
  yield [
    'consents.give',
    { customerId: id, channel: 'email', source: 'at the desk', wording: 'Yes, write to me.' },
  ]
  const job = await tx.job.findFirstOrThrow({ where: { status: 'booked' }, orderBy: { dropOffAt: 'asc' } })
  yield ['jobs.note', { id: job.id, words: 'Call before noon.' }]
  yield ['jobs.arrive', { id: job.id, version: job.version }]
  const bill = await tx.invoice.findFirstOrThrow({ where: { jobId: { startsWith: 'years-' } } })
  const paid = await tx.payment.aggregate({ where: { jobId: bill.jobId }, _sum: { amountMinor: true } })
  const seenPaidMinor = paid._sum.amountMinor ?? 0
  yield [
    'money.pay',
    {
      jobId: bill.jobId,
      id: bill.jobId,
      method: 'cash',
      amountMinor: -500,
      tipMinor: 0,
      note: '',
      seenPaidMinor,
    },
  ]
  const waiting = await tx.waitingEntry.findFirstOrThrow()
  yield ['waiting.remove', { id: waiting.id, version: waiting.version }]
  const lot = await tx.lot.findFirstOrThrow({ where: { leftCenti: { gt: 100 } } })
  yield ['shelf.use', { productId: lot.productId, lotId: lot.id, amount: 1, reason: 'Tried on a panel' }]
  yield ['history.takeBack', {}]
}

it('names every answer that a save has changed', async () => {
  const { desk, ask, save } = await window()
  const paths = queryPaths().filter(path => !ofTheComputer.includes(path))
  const answers = new Map<string, string>()
  // Twice: the first time what is kept beside the tables is worked out.
  for (const path of [...paths, ...paths]) answers.set(path, await ask(path))
  for await (const [path, input] of saves(desk)) {
    const { heard } = await save(path, input)
    expect(heard.length, path).toBeGreaterThan(0)
    const named = new Set(heard.flatMap(told => told.paths ?? paths))
    const changed: string[] = []
    for (const query of paths) {
      const answer = await ask(query)
      if (answer !== answers.get(query)) changed.push(query)
      answers.set(query, answer)
    }
    expect(changed.length, path).toBeGreaterThan(0)
    expect(
      changed.filter(query => !named.has(query)),
      `changed by ${path}, and not told`,
    ).toEqual([])
  }
}, 300_000)

it('tells a payment to the screens of money and not to the board, and gives its number to whoever saved', async () => {
  const { desk, ask, save } = await window()
  for (const path of ['board.range', 'money.owed', 'money.takings', 'shelf.list']) await ask(path)
  for await (const [path, input] of saves(desk)) {
    if (path !== 'money.pay') continue
    const { heard, own } = await save(path, input)
    expect(heard.map(told => [...(told.paths ?? [])].sort())).toEqual([['money.owed', 'money.takings']])
    expect(own).toBe(String(heard[0]!.save))
  }
})

it('counts as read what another answer had read before', async () => {
  const { desk } = await window()
  const { store } = desk
  // The shop is read once between two saves: the second is given what the first one read.
  for (const path of ['first', 'second']) await noteAnswer(store, path, () => findShop(store.read))
  const { paths } = toldOf(store, { number: 1, tables: new Set(['Shop']) })
  expect(paths).toEqual(expect.arrayContaining(['first', 'second']))
})

it('tells an answer that is under way whatever it has read so far', async () => {
  const { desk } = await window()
  const gate = Promise.withResolvers<void>()
  const told = () => toldOf(desk.store, { number: 1, tables: new Set(['Supplier']) }).paths
  const answer = noteAnswer(desk.store, 'slow.one', () => gate.promise)
  expect(told()).toContain('slow.one')
  gate.resolve()
  await answer
  expect(told()).not.toContain('slow.one')
})
