import { expect, it } from 'vitest'
import { atWall } from '../../../main/domain/calendar/index.ts'
import { checkOneSpan } from '../../../main/services/setUp/oneSpan.ts'

const zone = 'America/New_York'
const at = (hour: number) => atWall('2026-04-15', hour * 60, zone)

it('lets a stretch stand beside others, touching them too', () => {
  const others = [{ fromAt: at(8), toAt: at(10) }]
  expect(() => checkOneSpan(others, { fromAt: at(10), toAt: at(12) }, zone)).not.toThrow()
})

it('names the one it overlaps, at its beginning', () => {
  const others = [
    { fromAt: at(8), toAt: at(10) },
    { fromAt: at(12), toAt: at(14) },
  ]
  expect(() => checkOneSpan(others, { fromAt: at(13), toAt: at(15) }, zone)).toThrow(
    expect.objectContaining({ field: 'fromAt', message: expect.stringContaining('2026, 12:00 to') }),
  )
})

it('is refused at its end where that is not after its beginning', () => {
  expect(() => checkOneSpan([], { fromAt: at(9), toAt: at(9) }, zone)).toThrow(
    expect.objectContaining({
      field: 'toAt',
      value: at(9),
      message: expect.stringContaining('is not after'),
    }),
  )
})
