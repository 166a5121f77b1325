import { expect, it } from 'vitest'
import { startOfDay } from '../../../main/domain/calendar/index.ts'
import { checkShown } from '../../../main/services/floor/reach.ts'

const nowAt = startOfDay('2026-04-15', 'UTC')
const shown = (date: string) => () => checkShown(date, 'fromDate', nowAt)

it('looks at days past and to come, three years ahead', () => {
  expect(shown('2020-01-01')).not.toThrow()
  expect(shown('2029-04-15')).not.toThrow()
  expect(shown('2029-05-15')).toThrow(expect.objectContaining({ code: 'date-far', field: 'fromDate' }))
})

it('refuses what is no day by the field it came in', () => {
  expect(shown('2026-02-30')).toThrow(expect.objectContaining({ field: 'fromDate' }))
})
