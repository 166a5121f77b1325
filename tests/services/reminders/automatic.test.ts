import { describe, expect, it } from 'vitest'
import { upkeepTick } from '../../../main/services/reminders/automatic.ts'
import { batch } from '../../../main/services/reminders/messages.ts'
import { agree } from '../upkeep/coatedCar.ts'
import { mailDesk } from './mailDesk.ts'
import { change, duePlan } from './reminderDesk.ts'

describe('the automatic mode', () => {
  it('is off; switched on it writes, approves and sends once a day when the hours begin', async () => {
    const { desk, server, car } = await mailDesk()
    await agree(desk, car())
    await duePlan(desk, car())
    await upkeepTick(desk)
    expect((await batch(desk)).messages).toEqual([])
    await change(desk, { automatic: true })
    desk.setNow('2026-04-16T12:59:00Z')
    await upkeepTick(desk)
    expect(server.letters).toHaveLength(0)
    desk.setNow('2026-04-16T13:00:00Z')
    await upkeepTick(desk)
    await upkeepTick(desk)
    expect(server.letters).toHaveLength(1)
  })
})
