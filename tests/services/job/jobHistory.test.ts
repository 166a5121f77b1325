import { afterAll, beforeAll, beforeEach, expect, it } from 'vitest'
import { jobHistory } from '../../../main/services/job/jobHistory.ts'
import { makeDesk, type TestDesk } from '../makeDesk.ts'

let desk: TestDesk
beforeAll(async () => {
  desk = await makeDesk()
})
// A job of its own for each test: an audit line is never deleted.
let jobId = ''
let jobs = 0
beforeEach(() => {
  jobId = `job ${++jobs}`
})
afterAll(() => desk.close())

const write = (
  act: string,
  detail: object,
  change: { at?: number; entity?: string; entityId?: string } = {},
) =>
  desk.store.transact({ who: 'test', at: 1 }, tx =>
    tx.auditLine.create({
      data: { at: 1, who: 'Jo', entity: 'job', entityId: jobId, act, detail, ...change },
    }),
  )
const said = () => jobHistory(desk.store.read, jobId, at => `minute ${at}`)

it.each([
  ['held', { heldUntilAt: 5 }, 'place held until minute 5'],
  ['held', {}, 'place held until a time not kept'],
  ['lapsed', {}, 'the hold ran out'],
  ['released', {}, 'the held place was let go'],
  ['booked', { promisedAt: 7 }, 'booked, promised for minute 7'],
  ['moved', { startAt: 5, handoverAt: 9 }, 'moved to minute 5, handover minute 9'],
  ['arrived', { at: 5 }, 'car arrived minute 5'],
  ['started', { step: 'Wash', at: 5 }, '"Wash" begun minute 5'],
  ['started', { step: 'Wash', at: 5, reason: 'rain' }, '"Wash" begun minute 5, because: rain'],
  ['finished', { step: 'Wash', at: 5 }, '"Wash" finished minute 5'],
  ['taken back', { what: 'arrival', at: 5 }, 'taken back: arrival, minute 5'],
  ['taken back', { what: 'start', step: 'Wash', at: 5 }, 'taken back: start of "Wash", minute 5'],
  ['promised', { from: 5, to: 8 }, 'promised for minute 8 instead of minute 5'],
  ['cancelled', { reason: 'sold' }, 'cancelled, because: sold'],
  ['heated', { fromAt: 5, toAt: 8, counted: true }, 'heated cure recorded, minute 5 to minute 8'],
  [
    'heated',
    { fromAt: 5, toAt: 8, counted: false },
    'heated cure recorded, minute 5 to minute 8, met no row of a data sheet',
  ],
  ['heating taken back', { fromAt: 5 }, 'heated cure taken back, minute 5'],
  ['record drafted', {}, 'applied record saved'],
  ['record signed', { signedBy: 'Jo', reason: '' }, 'applied record signed by Jo'],
  ['record corrected', { signedBy: 'Jo', reason: 'typo' }, 'applied record corrected by Jo, because: typo'],
  ['handed over', { at: 9, safeAt: 9, undone: [], reason: '' }, 'handed over minute 9'],
  [
    'handed over',
    { at: 9, safeAt: 39, undone: [], reason: 'insists' },
    "handed over minute 9, 30 min before the profile's earliest, because: insists",
  ],
  [
    'handed over',
    { at: 9, safeAt: 39, undone: ['Wash'], reason: 'insists' },
    "handed over minute 9, 30 min before the profile's earliest and Wash not finished, because: insists",
  ],
  ['something newer', {}, 'something newer'],
])('tells of a job %s, by what was kept of it', async (act, detail, words) => {
  await write(act, detail)
  expect(await said()).toEqual([{ at: 1, who: 'Jo', words }])
})

it('tells the newest first, of this job alone', async () => {
  await write('lapsed', {}, { at: 3 })
  await write('held', { heldUntilAt: 2 }, { at: 2 })
  await write('booked', { promisedAt: 4 }, { at: 3 })
  await write('cancelled', {}, { entityId: 'other' })
  await write('cancelled', {}, { entity: 'vehicle' })
  expect((await said()).map(line => line.words)).toEqual([
    'booked, promised for minute 4',
    'the hold ran out',
    'place held until minute 2',
  ])
})
