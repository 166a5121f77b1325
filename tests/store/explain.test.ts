import { beforeEach, expect, it } from 'vitest'
import { Refusal } from '../../main/domain/refusal.ts'
import type { Tx } from '../../main/store/store.ts'
import { makeDesk, type TestDesk } from '../services/makeDesk.ts'

let desk: TestDesk
beforeEach(async () => {
  desk = await makeDesk()
})

const explained = (work: (tx: Tx) => Promise<unknown>) =>
  desk.store.transact({ who: 'desk', at: 0 }, work).catch(error => desk.store.explain(error))

const bay = { name: 'Bay 1', capabilities: [], position: 0 }

it.each<[string, (tx: Tx) => Promise<unknown>, string]>([
  ['a row that is not there', tx => tx.bay.update({ where: { id: 'none' }, data: bay }), 'missing'],
  ['a row that is looked for', tx => tx.bay.findUniqueOrThrow({ where: { id: 'none' } }), 'missing'],
  [
    'a row that points nowhere',
    tx => tx.bayClosure.create({ data: { bayId: 'none', fromAt: 0, toAt: 1, reason: '' } }),
    'missing',
  ],
  [
    'a row that is there already',
    tx =>
      tx.bay.createMany({
        data: [
          { id: 'a', ...bay },
          { id: 'a', ...bay },
        ],
      }),
    'taken',
  ],
])('puts %s into words', async (_what, work, code) => {
  const error = await explained(work)
  expect(error).toBeInstanceOf(Refusal)
  expect(error).toMatchObject({ code, message: expect.stringMatching(/^[A-Z].+\.$/) })
})

it('leaves every other error as it is: those are faults of ours', async () => {
  const fault = new Error('x')
  expect(desk.store.explain(fault)).toBe(fault)
  expect(await explained(tx => tx.$executeRawUnsafe('select * from nowhere'))).not.toBeInstanceOf(Refusal)
  expect(desk.store.explain(undefined)).toBe(undefined)
})

it.each([
  ['SQLITE_FULL', 'database or disk is full', /^There is no room left for .* Nothing of this was saved\.$/],
  ['SQLITE_IOERR_WRITE', 'disk I/O error', /^The disk failed at .* Nothing of this was saved\.$/],
  [
    'SQLITE_READONLY',
    'attempt to write a readonly database',
    /cannot be written: look at the folder's rights/,
  ],
  ['SQLITE_BUSY', 'database is locked', /^Another program holds .*: close that program/],
  ['SQLITE_CORRUPT', 'database disk image is malformed', /is damaged .* Nothing of this was saved\.$/],
])(
  'says of the disk what SQLite says by %s, and that nothing was saved',
  (originalCode, originalMessage, words) => {
    // As the adapter hands on what SQLite said.
    const error = Object.assign(new Error(originalMessage), { cause: { originalCode, originalMessage } })
    expect(desk.store.explain(error)).toMatchObject({
      name: 'Refusal',
      message: expect.stringMatching(words),
    })
  },
)

it('takes a text that is no JSON for a fault of ours, not for a damaged database', () => {
  const told = { originalCode: 'SQLITE_ERROR', originalMessage: 'malformed JSON' }
  const error = Object.assign(new Error('malformed JSON'), { cause: told })
  expect(desk.store.explain(error)).toBe(error)
})
