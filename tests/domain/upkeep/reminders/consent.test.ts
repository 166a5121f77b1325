import { describe, expect, it } from 'vitest'
import { checkConsent } from '../../../../main/domain/upkeep/reminders/consent.ts'
import { mergeValues } from '../../../../main/domain/upkeep/reminders/mergeValues.ts'
import { GIVEN, utc } from './arbitraries.ts'

const facts = {
  ownerName: 'Ann Example',
  carName: 'Merle Coupe, blue',
  plate: 'ABC 123',
  visitName: 'protection renewal',
  dueOn: '2026-09-14',
  lastOn: '2026-03-14',
  slotAts: [utc('2026-09-14T13:00Z'), utc('2026-09-16T18:30Z')],
  heldUntilAt: utc('2026-09-01T21:00Z'),
  shopName: 'Example Shine',
  shopPhone: '+1 212 555 0123',
  shopAddress: '1 Example Street, Exampleton',
  stopWay: 'stop@example.com',
}
const _values = mergeValues(facts, 'en', 'America/New_York')

describe('consent', () => {
  it.each([
    [{ channel: 'all' as const }, 'channel'],
    [{ source: ' ' }, 'source'],
    [{ wording: '' }, 'wording'],
  ])('is refused with %j', (change, field) => {
    checkConsent(GIVEN)
    expect(() => checkConsent({ ...GIVEN, ...change })).toThrow(expect.objectContaining({ field }))
  })
})
