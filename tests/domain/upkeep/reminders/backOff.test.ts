import { expect, it } from 'vitest'
import { waitAfter } from '../../../../main/domain/upkeep/reminders/backOff.ts'

it('waits twice as long each time, a day at the most, and gives up after the tenth attempt', () => {
  const waits = Array.from({ length: 11 }, (_, i) => waitAfter(i + 1))
  expect(waits).toEqual([30, 60, 120, 240, 480, 960, 1440, 1440, 1440, null, null])
})
