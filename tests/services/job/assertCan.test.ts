import { expect, it } from 'vitest'
import type { JobAct, JobStatus } from '../../../main/domain/job/index.ts'
import { assertCan } from '../../../main/services/job/assertCan.ts'

const refused: [JobAct, JobStatus, string, RegExp][] = [
  ['confirm', 'cancelled', 'not-held', /was released; ask for new offers/],
  ['confirm', 'booked', 'not-held', /Job 12 is booked already/],
  ['letGo', 'booked', 'not-held', /is no place held; cancel it/],
  ['arrive', 'held', 'not-booked', /is only held: confirm it first/],
  ['arrive', 'inShop', 'not-booked', /is not waiting for its car/],
  ['work', 'booked', 'not-here', /is not here yet: record its arrival/],
  ['work', 'handedOver', 'not-here', /Job 12 is not in the shop/],
  ['takeBack', 'booked', 'not-here', /nothing can be taken back/],
  ['handOver', 'booked', 'not-here', /cannot be handed over/],
  ['promise', 'held', 'no-promise', /no promise to change/],
  ['cancel', 'inShop', 'not-booked', /is here: hand it over, with the reason/],
  ['cancel', 'handedOver', 'not-booked', /is over; there is nothing to cancel/],
  ['move', 'handedOver', 'over', /it stays where it was/],
]

it.each(refused)('%s of a job that is %s is refused as %s', (act, status, code, words) => {
  const refusing = () => assertCan({ id: 'j', number: 12, status }, act)
  expect(refusing).toThrow(expect.objectContaining({ code, field: 'id', value: 'j' }))
  expect(refusing).toThrow(words)
  expect(() => assertCan({ id: 'j', number: 12, status }, act, { jobId: 'j' })).toThrow(
    expect.objectContaining({ field: 'jobId' }),
  )
})

it.each([
  ['confirm', 'held'],
  ['confirm', 'lapsed'],
  ['arrive', 'booked'],
  ['work', 'inShop'],
  ['takeBack', 'inShop'],
  ['handOver', 'inShop'],
  ['promise', 'booked'],
  ['cancel', 'booked'],
  ['move', 'booked'],
] as const)('%s of a job that is %s goes through', (act, status) => {
  expect(() => assertCan({ id: 'j', number: 12, status }, act)).not.toThrow()
})
