// NIST/SEMATECH e-Handbook 1.3.6.7.1, and the shelf's own normal distribution, which shares nothing with the table.
import { expect, it } from 'vitest'
import { normalShare } from '../../../../main/domain/shelf/normal.ts'
import { deviates } from '../../../../main/domain/upkeep/life/confidence.ts'

it.each([0.8, 0.9, 0.95, 0.99] as const)(
  '%d of a normal distribution lies within so many deviations',
  level => {
    expect(normalShare(deviates(level)) - normalShare(-deviates(level))).toBeCloseTo(level, 12)
  },
)
