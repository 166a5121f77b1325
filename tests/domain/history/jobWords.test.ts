import { expect, it } from 'vitest'
import { sayLine } from '../../../main/domain/history/index.ts'

const none = () => undefined
const say = { when: (at: number) => `minute ${at}`, money: String, nameOf: none, unitOf: none }

it.each([
  ['held', { heldUntilAt: 5 }, 'place held until minute 5'],
  ['held', {}, 'place held until a time not kept'],
  ['lapsed', {}, 'the hold ran out'],
  ['released', {}, 'the hold was released'],
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
])('tells of a job %s, by what was kept of it', (act, detail, words) => {
  expect(sayLine({ act, entity: 'job', entityId: 'j1', detail }, say)).toBe(words)
})
