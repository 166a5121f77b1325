import { expect, test } from 'vitest'
import {
  can,
  isCalledOff,
  isOver,
  type JobAct,
  type JobStatus,
  statusAt,
} from '../../../main/domain/job/index.ts'

/** The life of a job, written down apart from the code: what is open in which status. */
const life: Record<JobStatus, JobAct[]> = {
  held: ['confirm', 'letGo', 'cancel', 'move'],
  lapsed: ['confirm'],
  booked: ['arrive', 'promise', 'cancel', 'move', 'rebook', 'noShow', 'comesLater'],
  inShop: ['work', 'takeBack', 'handOver', 'promise', 'move', 'rebook', 'fetchLater'],
  handedOver: [],
  cancelled: ['rebook'],
  noShow: ['rebook'],
}
const acts: JobAct[] = [
  'confirm',
  'letGo',
  'arrive',
  'work',
  'takeBack',
  'handOver',
  'promise',
  'cancel',
  'move',
  'rebook',
  'noShow',
  'comesLater',
  'fetchLater',
]

test.each(Object.entries(life) as [JobStatus, JobAct[]][])(
  '%s: only its own acts are open',
  (status, open) => {
    expect(acts.filter(act => can({ status }, act))).toEqual(acts.filter(act => open.includes(act)))
  },
)

test('What is over, and what never came', () => {
  const all = Object.keys(life) as JobStatus[]
  expect(all.filter(status => isOver({ status }))).toEqual(['lapsed', 'handedOver', 'cancelled', 'noShow'])
  expect(all.filter(status => isCalledOff({ status }))).toEqual(['lapsed', 'cancelled', 'noShow'])
})

test('A held place is lapsed from the minute its time runs out', () => {
  expect(statusAt({ status: 'held', heldUntilAt: 100 }, 99)).toBe('held')
  expect(statusAt({ status: 'held', heldUntilAt: 100 }, 100)).toBe('lapsed')
  expect(statusAt({ status: 'booked', heldUntilAt: null }, 100)).toBe('booked')
  expect(() => statusAt({ status: 'toString', heldUntilAt: null }, 0)).toThrow('no status')
})
