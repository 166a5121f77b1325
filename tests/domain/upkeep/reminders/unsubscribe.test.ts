import { describe, expect, it } from 'vitest'
import { mergeValues } from '../../../../main/domain/upkeep/reminders/mergeValues.ts'
import { unsubscribeHeaders } from '../../../../main/domain/upkeep/reminders/unsubscribe.ts'
import { utc } from './arbitraries.ts'

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

describe('the way out', () => {
  it('may be both, and is then one click', () => {
    const headers = unsubscribeHeaders({ mailto: 'stop@example.com', https: 'https://shop.example/u/1' })
    expect(headers['List-Unsubscribe']).toBe('<mailto:stop@example.com>, <https://shop.example/u/1>')
    // The word that lets a mail program unsubscribe in one click (RFC 8058 section 3.1), and only over https.
    expect(headers['List-Unsubscribe-Post']).toBe('List-Unsubscribe=One-Click')
    expect(unsubscribeHeaders({ mailto: 'stop@example.com' })).not.toHaveProperty('List-Unsubscribe-Post')
  })

  it.each([
    [{}],
    [{ https: 'http://shop.example/u/1' }],
    [{ https: 'https://shop.example/u/1>\r\nBcc: x' }],
    [{ mailto: 'stop@example.com\nX: y' }],
    [{ mailto: 'a@example.com>, <mailto:b@example.com' }],
  ])('is refused as %j', ways => {
    expect(() => unsubscribeHeaders(ways)).toThrow(expect.objectContaining({ name: 'Refusal' }))
  })
})
