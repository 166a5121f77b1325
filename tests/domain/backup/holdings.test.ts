import { expect, test } from 'vitest'
import { holdingsWords } from '../../../main/domain/backup/index.ts'

test('What a copy holds is said in a line', () => {
  const rest = { shop: null, lastJob: null, lastSavedAt: null }
  expect(holdingsWords({ ...rest, jobs: 812, vehicles: 1240, customers: 1 })).toBe(
    '812 jobs, 1,240 cars, 1 customer',
  )
})
