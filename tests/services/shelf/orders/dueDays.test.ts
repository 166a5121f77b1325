import { expect, it } from 'vitest'
import { atWall } from '../../../../main/domain/calendar/index.ts'
import { dueDays } from '../../../../main/services/shelf/orders/dueDays.ts'

const zone = 'America/New_York'

/** Works Monday to Friday; what is ordered by noon counts for the day. */
const supplier = {
  id: 'one',
  name: 'Corrin Supply',
  weekdays: [1, 2, 3, 4, 5],
  closedOn: [],
  cutoffMin: 720,
  lead: { meanDays: 2, sdDays: 0 },
  minimumOrderMinor: 0,
  carriageMinor: 0,
  freeCarriageFromMinor: null,
}

const placed = (date: string, minute: number) =>
  dueDays(supplier, supplier.lead, atWall(date, minute, zone), zone)

it('counts an order by the cut-off for the day itself, and one after it for the next working day', () => {
  expect(placed('2026-04-15', 700)).toMatchObject({ placedOn: '2026-04-15', expectedOn: '2026-04-17' })
  expect(placed('2026-04-15', 730)).toMatchObject({ placedOn: '2026-04-16', expectedOn: '2026-04-20' })
})

it('gives no order a weekend', () => {
  expect(placed('2026-04-18', 600)).toMatchObject({ placedOn: '2026-04-20', expectedOn: '2026-04-22' })
})
