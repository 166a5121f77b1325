import { describe, expect, it } from 'vitest'
import { unsubscribeHeaders } from '../../../../main/domain/upkeep/reminders/unsubscribe.ts'

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
