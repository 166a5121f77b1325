import { expect, test } from 'vitest'
import { holdPlace } from '../../../main/services/booking/booking.ts'
import { offers } from '../../../main/services/booking/offers.ts'
import { getJob } from '../../../main/services/job/jobView.ts'
import { listTreatments, saveTreatment } from '../../../main/services/setUp/treatments.ts'
import { moneyShop, setRules } from '../money/sample.ts'

const wish = (treatmentIds: string[]) => ({
  sizeClass: 'medium' as const,
  condition: 'good' as const,
  treatmentIds,
})

test('One wash for two treatments is charged once, and it says where', async () => {
  const { desk, shop } = await moneyShop()
  const both = [shop.treatments.wash, shop.treatments.twoLayers]
  const asked = await offers(desk, wish(both))
  // The wash is worth all of its 120.00, and 60 of the 330 minutes of 1,299.00 with the layers.
  expect(asked.priceMinor).toBe(129_900 + 12_000 - 12_000)
  expect(asked.charges).toMatchObject([
    { kind: 'shared', words: 'Wash is charged with Two layers', amountMinor: 12_000 },
  ])
  await setRules(desk, { sharedOnce: false })
  expect((await offers(desk, wish(both))).priceMinor).toBe(141_900)
})

test('Extras, a package and a discount are in the offer and in the job that is held, with its deposit', async () => {
  const { desk, shop } = await moneyShop({ sharedOnce: false })
  const both = [shop.treatments.wash, shop.treatments.twoLayers]
  await setRules(desk, {
    extras: [{ key: 'kit', name: 'Care kit', priceMinor: 4_500, taxKey: '' }],
    packages: [{ key: 'p', name: 'Fresh and sealed', treatmentIds: both, percent: '10' }],
  })
  const pricing = {
    extras: [{ key: 'kit', quantity: '2' }],
    discounts: [{ treatmentId: null, amountMinor: 1_000, percent: null, reason: 'Second car' }],
  }
  const asked = await offers(desk, { ...wish(both), ...pricing })
  // 1,419.00 less 141.90, and 90.00 less 10.00 on top.
  expect(asked).toMatchObject({ priceMinor: 135_710, depositMinor: 13_571, unpriced: [] })
  if (!asked.soonest.feasible) throw new Error('no place')
  const { jobId } = await holdPlace(desk, {
    vehicleId: shop.vehicles[0]!,
    condition: 'good',
    treatmentIds: both,
    plan: asked.soonest.plan,
    ...pricing,
  })
  expect(await getJob(desk, { id: jobId })).toMatchObject({ priceMinor: 135_710, depositMinor: 13_571 })
})

test('A treatment without a price says so, and takes the price agreed for it', async () => {
  const { desk, shop } = await moneyShop()
  const [wash] = (await listTreatments(desk)).filter(each => each.id === shop.treatments.wash)
  await saveTreatment(desk, { ...wash!, prices: { small: 0, medium: 0, large: 0, xl: 0 } })
  const treatmentIds = [shop.treatments.wash]
  expect(await offers(desk, wish(treatmentIds))).toMatchObject({ priceMinor: 0, unpriced: ['Hand wash'] })
  const agreed = [{ treatmentId: shop.treatments.wash, priceMinor: 9_900 }]
  expect(await offers(desk, { ...wish(treatmentIds), agreed })).toMatchObject({
    priceMinor: 9_900,
    unpriced: [],
  })
})

test('An extra that is gone, no number of it and a deposit above the price are refused', async () => {
  const { desk, shop } = await moneyShop()
  await setRules(desk, { extras: [{ key: 'kit', name: 'Care kit', priceMinor: 4_500, taxKey: '' }] })
  const asked = wish([shop.treatments.wash])
  for (const [extras, field] of [
    [[{ key: 'gone', quantity: '1' }], 'extras.0.key'],
    [[{ key: 'kit', quantity: '0' }], 'extras.0.quantity'],
    [[{ key: 'kit', quantity: 'two' }], 'extras.0.quantity'],
  ] as const)
    await expect(offers(desk, { ...asked, extras: [...extras] })).rejects.toMatchObject({ field })
  const { soonest } = await offers(desk, asked)
  if (!soonest.feasible) throw new Error('no place')
  await expect(
    holdPlace(desk, {
      vehicleId: shop.vehicles[0]!,
      condition: 'good',
      treatmentIds: asked.treatmentIds,
      plan: soonest.plan,
      depositMinor: 12_001,
    }),
  ).rejects.toMatchObject({ field: 'depositMinor' })
})
