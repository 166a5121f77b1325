import type { JobStatus } from '../../main/api/views.ts'

/** How a job stands, in words. */
export const statusWords: Record<JobStatus, string> = {
  held: 'held, not booked yet',
  booked: 'booked',
  inShop: 'in the shop',
  handedOver: 'handed over',
  cancelled: 'cancelled',
  lapsed: 'the held place lapsed',
}
