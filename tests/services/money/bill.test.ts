import { expect, test } from 'vitest'
import { getBill, saveBill } from '../../../main/services/money/bill.ts'
import { bookJob } from '../bookJob.ts'
import { billed, moneyShop } from './sample.ts'

test('A bill is what was sold with its tax; written anew, it is what was written', async () => {
  const { desk, shop } = await moneyShop()
  const { id } = await bookJob(desk, shop, { treatments: ['wash'] })
  const bill = await getBill(desk, { id })
  // 8.25 percent of 120.00.
  expect(bill).toMatchObject({
    withoutTaxMinor: 12_000,
    taxMinor: 990,
    withTaxMinor: 12_990,
    depositMinor: 1_200,
  })
  const charges = [
    {
      kind: 'extra' as const,
      treatmentId: null,
      words: 'Care kit',
      quantity: '2',
      amountMinor: 1_000,
      taxKey: 'none',
    },
    {
      kind: 'discount' as const,
      treatmentId: shop.treatments.wash,
      words: 'Second car',
      quantity: '1',
      amountMinor: 2_000,
      taxKey: '',
    },
  ]
  const write = {
    id,
    version: bill.version,
    prices: bill.prices.map(each => ({ id: each.id, priceMinor: 10_000 })),
    charges,
    depositMinor: 500,
    taxExempt: '',
    taxReversed: false,
  }
  await saveBill(desk, write)
  // 8.25 percent of 80.00 is 6.60, and the kits bear none.
  expect(await getBill(desk, { id })).toMatchObject({
    withoutTaxMinor: 10_000,
    taxMinor: 660,
    depositMinor: 500,
    lines: [
      { name: 'Hand wash', discountReason: 'Second car' },
      { name: 'Care kit', amountMinor: 2_000 },
    ],
  })
  await expect(saveBill(desk, write)).rejects.toMatchObject({ code: 'stale' })
  await saveBill(desk, { ...write, version: bill.version + 1, taxExempt: 'Resale 4411' })
  expect(await getBill(desk, { id })).toMatchObject({ taxMinor: 0, withTaxMinor: 10_000 })
})

test('A bill that cannot be is refused and leaves the one before', async () => {
  const { desk, shop } = await moneyShop()
  const { id } = await bookJob(desk, shop, { treatments: ['wash'] })
  const { version, prices } = await getBill(desk, { id })
  const off = (change: object) => ({
    kind: 'discount' as const,
    treatmentId: null,
    words: 'Late',
    quantity: '1',
    amountMinor: 1_000,
    taxKey: '',
    ...change,
  })
  const write = {
    id,
    version,
    prices: prices.map(each => ({ id: each.id, priceMinor: each.priceMinor })),
    charges: [off({})],
    depositMinor: 0,
    taxExempt: '',
    taxReversed: false,
  }
  for (const change of [
    { charges: [off({ words: '' })] },
    { charges: [off({ amountMinor: -1 })] },
    { charges: [off({ amountMinor: 12_001 })] },
    { charges: [off({ quantity: 'x' })] },
    { prices: [{ id: prices[0]!.id, priceMinor: -1 }] },
    { prices: [{ id: 'other', priceMinor: 1 }] },
    { depositMinor: -1 },
  ])
    await expect(saveBill(desk, { ...write, ...change })).rejects.toMatchObject({ name: 'Refusal' })
  expect(await getBill(desk, { id })).toMatchObject({ version, withoutTaxMinor: 12_000, charges: [] })
})

test('An invoiced bill stays as it is', async () => {
  const made = await moneyShop()
  const { jobId } = await billed(made)
  const { version, invoiceId, toPayMinor } = await getBill(made.desk, { id: jobId })
  expect(invoiceId).not.toBeNull()
  expect(toPayMinor).toBe(12_990)
  const write = {
    id: jobId,
    version,
    prices: [],
    charges: [],
    depositMinor: 0,
    taxExempt: '',
    taxReversed: false,
  }
  await expect(saveBill(made.desk, write)).rejects.toMatchObject({ code: 'invoiced' })
})
