/** Plans of one car in New York, for the tests that reckon by hand. */
import type { CarTimes, Plan } from '../../../../main/domain/upkeep/plan/plan.ts'

export const zone = 'America/New_York'
export const here: CarTimes = { soldOn: null, away: [] }

export const topper: Plan = {
  id: 't1',
  kind: 'topper',
  title: 'topper renewal',
  rule: 'FREQ=MONTHLY;INTERVAL=6',
  anchor: { to: 'last-done', since: '2026-03-14', event: 'the coating' },
  earlyDays: 14,
  lateDays: 14,
}

export const yearly: Plan = {
  id: 'i1',
  kind: 'inspection',
  title: 'yearly inspection',
  rule: 'FREQ=YEARLY',
  anchor: { to: 'date', on: '2027-04-20' },
  earlyDays: 30,
  lateDays: 30,
}

export const ask = (today: string, isOpen?: (date: string) => boolean) => ({
  today,
  zone,
  ...(isOpen && { isOpen }),
})
