import type { JobStatus } from '../../main/api/views.ts'
import { say } from '../../main/domain/language/index.ts'

/** How a job stands, in words. */
export const statusWords: Record<JobStatus, string> = {
  held: say('held, not booked yet'),
  booked: say('booked'),
  inShop: say('in the shop'),
  handedOver: say('handed over'),
  cancelled: say('cancelled'),
  noShow: say('did not come'),
  lapsed: say('the held place lapsed'),
}
