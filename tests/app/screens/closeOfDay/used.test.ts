import { expect, test } from 'vitest'
import { usedByProduct } from '../../../../app/screens/closeOfDay/used.ts'
import type { CloseOfDayView } from '../../../../main/api/views.ts'

const draw = (productId: string, proposed: number) => ({
  productId,
  productName: productId,
  unit: 'ml',
  proposed,
})
const step = (position: number, ...draws: object[]) => ({ jobId: 'j', position, draws })
const product = (id: string, usable: number, booked: number[], jobId: string | null = null) => ({
  id,
  usable,
  projection: {
    days: booked.map(amount => ({ booked: amount })),
    runsDry: jobId === null ? null : { jobId, words: `${id} runs dry.` },
  },
})
const used = (stepsToConfirm: object[], products: object[]) =>
  usedByProduct({ stepsToConfirm, products } as unknown as CloseOfDayView)

test('what several steps used of a product is one row, with what it leaves and what two weeks ask', () => {
  const days = [...Array.from({ length: 14 }, () => 5), 1000]
  const [row] = used([step(0, draw('foam', 80)), step(1, draw('foam', 68))], [product('foam', 500, days)])
  expect(row).toMatchObject({
    name: 'foam',
    amounts: [80, 68],
    left: 352,
    mustLast: 70,
  })
  expect(row!.steps).toHaveLength(2)
})

test('what runs short under a job leads, then the names', () => {
  const rows = used(
    [step(0, draw('b', 1), draw('a', 1)), step(1, draw('short', 1))],
    [product('short', 9, [], 'job')],
  )
  expect(rows.map(row => row.name)).toEqual(['short', 'a', 'b'])
  expect(rows[0]!.short).toBe('short runs dry.')
})
