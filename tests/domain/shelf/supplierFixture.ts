import type { Supplier } from '../../../main/domain/shelf/index.ts'

export const supplier: Supplier = {
  id: 's',
  name: 'Halden Supply',
  weekdays: [1, 2, 3, 4, 5],
  closedOn: ['2026-04-03', '2026-04-06'],
  cutoffMin: 14 * 60,
  lead: { meanDays: 3, sdDays: 0 },
  minimumOrderMinor: 0,
  carriageMinor: 900,
  freeCarriageFromMinor: null,
}
