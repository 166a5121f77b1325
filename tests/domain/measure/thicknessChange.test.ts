import { expect, it } from 'vitest'
import { thicknessDifferences } from '../../../main/domain/measure/index.ts'

const spots = (panel: string, ...ums: number[]) => ums.map((um, i) => ({ panel, spot: i + 1, um }))

it('a change counts where it is more than repeating the reading would make, on panels read on both sides', () => {
  const before = [...spots('Bonnet', 120, 121, 119), ...spots('Roof', 110)]
  const after = [...spots('Bonnet', 117, 116, 118), ...spots('Boot lid', 130)]
  // 2.8 · 1 · √(1/6 + 1/6) = 1.617 (ISO 5725-6:1994, 4.2.1, from memory).
  expect(thicknessDifferences(before, after, 1)).toEqual([
    {
      panel: 'Bonnet',
      beforeUm: 120,
      afterUm: 117,
      changeUm: -3,
      limitUm: expect.closeTo(1.6166, 4),
      real: true,
    },
  ])
  expect(thicknessDifferences(before, after, 2)).toMatchObject([
    { limitUm: expect.closeTo(3.2332, 4), real: false },
  ])
  expect(() => thicknessDifferences(before, after, 0)).toThrow()
})
