import { TRPCClientError } from '@trpc/client'
import { describe, expect, test } from 'vitest'
import { faultsOf } from '../../../app/parts/faults.ts'

const refused = (message: string, field: string | null, reason = 'invalid') =>
  TRPCClientError.from({
    error: { message, code: -32_600, data: { code: 'BAD_REQUEST', fault: { field, reason } } },
  })

describe('a refusal on a form', () => {
  test('goes to the field it names, and is then not said twice', () => {
    const faults = faultsOf(refused('Give a time.', 'weekly.0.to'))
    expect(faults.at('weekly')).toBeUndefined()
    expect(faults.at('weekly.0.to')).toBe('Give a time.')
    expect(faults.rest()).toBeNull()
  })

  test('goes to what holds the field where no field does', () => {
    const faults = faultsOf(refused('Choose one.', 'bays.0.capabilities.1'))
    expect(faults.under('bays.0.cap')).toBeUndefined()
    expect(faults.under('bays.0.capabilities')).toBe('Choose one.')
    expect(faults.rest()).toBeNull()
  })

  test('is left for the note where no field takes it', () => {
    const faults = faultsOf(refused('The folder belongs to another shop.', 'shop'))
    expect(faults.at('name')).toBeUndefined()
    expect(faults.rest()).toBe('The folder belongs to another shop.')
  })

  test('loses the path that the api wrote before its words', () => {
    const faults = faultsOf(
      refused('steps.0.minutes.xl: Give a duration.; name: too short', 'steps.0.minutes.xl'),
    )
    expect(faults.at('steps.0.minutes.xl')).toBe('Give a duration.')
  })

  test('says when another window was first', () => {
    expect(faultsOf(refused('Somebody else changed this bay.', 'bay', 'stale')).stale).toBe(true)
  })

  test('of another window belongs to the whole form, even where the row is named like a field', () => {
    const faults = faultsOf(refused('Somebody else changed this date.', 'date', 'stale'))
    expect(faults.at('date')).toBeUndefined()
    expect(faults.rest()).toBe('Somebody else changed this date.')
  })

  test('for booked cars is asked about elsewhere', () => {
    const faults = faultsOf(refused('Job 1 …', 'weekly', 'touches-bookings'))
    expect(faults.at('weekly')).toBeUndefined()
    expect(faults.rest()).toBeNull()
  })

  test('that came from no server keeps its words', () => {
    expect(faultsOf(new Error('offline')).rest()).toBe('offline')
    expect(faultsOf(null).rest()).toBeNull()
  })
})
