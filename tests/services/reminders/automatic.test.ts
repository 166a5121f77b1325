import { afterEach, describe, expect, it } from 'vitest'
import { upkeepTick } from '../../../main/services/reminders/automatic.ts'
import { batch } from '../../../main/services/reminders/messages.ts'
import { startMailServer, type TestMailServer } from '../../outbox/mailServer.ts'
import { agree } from '../upkeep/coatedCar.ts'
import { approvedBatch, change, duePlan, type ReminderDesk, reminderDesk } from './reminderDesk.ts'

type Options = Parameters<typeof startMailServer>[0]

let server: TestMailServer
let desk: ReminderDesk['desk']
afterEach(async () => {
  await desk.close()
  await server.close()
})

/** One message approved, to go out through a server that behaves in some way. */
async function _oneApproved(options: Options): Promise<string> {
  server = await startMailServer(options)
  const made = await reminderDesk(server.port)
  desk = made.desk
  await agree(desk, made.shop.vehicles[0]!)
  await duePlan(desk, made.shop.vehicles[0]!)
  const [approved] = await approvedBatch(desk)
  return approved!.id
}

const _says = (responseCode: number) => Object.assign(new Error('mailbox'), { responseCode })

describe('the automatic mode', () => {
  it('is off; switched on it writes, approves and sends once a day when the hours begin', async () => {
    server = await startMailServer()
    const made = await reminderDesk(server.port)
    desk = made.desk
    await agree(desk, made.shop.vehicles[0]!)
    await duePlan(desk, made.shop.vehicles[0]!)
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
