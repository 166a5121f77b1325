import { describe, expect, it } from 'vitest'
import { reminderResults } from '../../../../main/domain/upkeep/results/results.ts'

describe('results', () => {
  const group = (channel: 'email' | 'call', reminded: number, booked: number, came: number) => ({
    channel,
    templateId: `reminder-${channel}`,
    reminded,
    booked,
    came,
  })

  it('count by channel and template, and give ranges for what is few', () => {
    const [email, call] = reminderResults([group('call', 1, 0, 0), group('email', 10, 8, 7)])
    expect(email).toMatchObject({ channel: 'email', reminded: 10 })
    expect(email!.booked.words).toBe('8 of 10 (49 to 95 %)')
    expect(email!.came).toMatchObject({ count: 7, of: 8 })
    expect(call!.booked.words).toBe('0 of 1 (0 to 80 %)')
    expect(call!.came.words).toBe('none yet')
  })
})
