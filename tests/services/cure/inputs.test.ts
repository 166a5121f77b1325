import { expect, test } from 'vitest'
import { postedReadings } from '../../../main/services/cure/inputs.ts'

const posted = (readings: object[], more = {}) => postedReadings.safeParse({ readings, ...more })

test('a sensor may send its time as a number or a text, and leave out what it does not measure', () => {
  expect(posted([{ time: 1_776_240_000, air: 21.5 }]).data).toEqual({
    unit: 'C',
    readings: [{ time: '1776240000', air: 21.5, panel: null, humidity: null, dewPoint: null }],
  })
  expect(posted([{ time: '2026-04-15T08:00Z', air: '70', humidity: 48 }], { unit: 'F' }).data).toMatchObject({
    unit: 'F',
    readings: [{ time: '2026-04-15T08:00Z', air: '70', humidity: 48 }],
  })
})

test('a post holds from one to 500 readings, each with its air', () => {
  const some = (count: number) => posted(Array.from({ length: count }, () => ({ time: 0, air: 20 }))).success
  expect([some(0), some(1), some(500), some(501)]).toEqual([false, true, true, false])
  expect(posted([{ time: 0 }]).success).toBe(false)
  expect(posted([{ time: 0, air: 20 }], { unit: 'K' }).success).toBe(false)
})
