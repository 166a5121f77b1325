import { expect, test } from 'vitest'
import { keptShares } from '../../../main/domain/shelf/survival.ts'

test('The estimate is that of the published remissions', () => {
  // Weeks in remission of 21 patients on 6-mercaptopurine, of whom 12 were still well when last seen: E. J. Freireich et al.,
  // Blood 21 (1963); the estimates as tabulated in D. R. Cox and D. Oakes, Analysis of Survival Data (1984). From memory.
  const relapsed = [6, 6, 6, 7, 10, 13, 16, 22, 23]
  const well = [6, 9, 10, 11, 17, 19, 20, 25, 32, 32, 34, 35]
  const shares = keptShares([
    ...relapsed.map(days => ({ days, ended: true })),
    ...well.map(days => ({ days, ended: false })),
  ])
  expect(shares.map(({ days, share }) => [days, share.toFixed(3)])).toEqual([
    [6, '0.857'],
    [7, '0.807'],
    [10, '0.753'],
    [13, '0.690'],
    [16, '0.627'],
    [22, '0.538'],
    [23, '0.448'],
  ])
})
