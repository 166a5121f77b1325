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
    expect(email!.booked).toMatchObject({ words: '8 of 10 booked', few: true })
    expect(email!.came).toMatchObject({ count: 7, of: 8 })
    expect(call!.booked).toMatchObject({ words: '0 of 1 booked', few: true })
    expect(call!.came.words).toBe('none yet')
    // Wilson's range of 160 in 200 is 74 to 85 %.
    expect(reminderResults([group('email', 200, 160, 0)])[0]!.booked).toMatchObject({ few: false })
  })
})
