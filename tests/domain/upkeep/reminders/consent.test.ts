import { describe, expect, it } from 'vitest'
import { checkConsent } from '../../../../main/domain/upkeep/reminders/consent.ts'
import { GIVEN } from './arbitraries.ts'

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
