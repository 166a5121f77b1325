import { startMailServer, type TestMailServer } from '../../outbox/mailServer.ts'
import { closedOnce } from '../makeDesk.ts'
import { agree } from '../upkeep/coatedCar.ts'
import { approvedBatch, duePlan, type ReminderDesk, reminderDesk } from './reminderDesk.ts'

export interface MailDesk extends ReminderDesk {
  server: TestMailServer
  /** The ids of the shop's cars by their place in it, the first where none is said. */
  car(i?: number): string
}

/** A reminder desk whose mail goes to a server that behaves in some way; both are closed after the test. */
export async function mailDesk(options: Parameters<typeof startMailServer>[0] = {}): Promise<MailDesk> {
  const server = await startMailServer(options)
  server.close = closedOnce(server.close)
  const made = await reminderDesk(server.port)
  return { ...made, server, car: (i = 0) => made.shop.vehicles[i]! }
}

/** The same with one message written and approved, to go out. */
export async function oneApproved(options: Parameters<typeof startMailServer>[0] = {}) {
  const made = await mailDesk(options)
  await agree(made.desk, made.car())
  await duePlan(made.desk, made.car())
  const [approved] = await approvedBatch(made.desk)
  return { ...made, id: approved!.id }
}

/** What a mail server says instead of taking a letter. */
export const says = (responseCode: number) => Object.assign(new Error('mailbox'), { responseCode })
