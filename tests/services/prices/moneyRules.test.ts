import { expect, test } from 'vitest'
import { getMoneyRules, rateOf, saveMoneyRules } from '../../../main/services/prices/moneyRules.ts'
import { makeDesk } from '../makeDesk.ts'
import { testShop } from '../testShop.ts'

test('A shop begins without tax, and keeps the rules it saves', async () => {
  const desk = await makeDesk()
  await testShop(desk)
  const before = await getMoneyRules(desk)
  expect(before).toMatchObject({ version: 0, depositPercent: '0', taxes: [{ percent: '0', category: 'O' }] })
  const taxes = [{ key: 'usual', name: ' Sales  tax ', percent: '8.25', category: 'S' as const }]
  await saveMoneyRules(desk, { ...before, taxes, depositPercent: '20' })
  const after = await getMoneyRules(desk)
  expect(after).toMatchObject({ version: 1, depositPercent: '20', taxes: [{ name: 'Sales tax' }] })
  expect(rateOf(after, 'gone').percent).toBe('8.25')
  await expect(saveMoneyRules(desk, { ...before, version: 0 })).rejects.toMatchObject({ code: 'stale' })
})

test('What no bill could be made with is refused at its field', async () => {
  const desk = await makeDesk()
  await testShop(desk)
  const rules = await getMoneyRules(desk)
  const extra = { key: 'kit', name: 'Care kit', priceMinor: 4_500, taxKey: '' }
  const pack = { key: 'p', name: 'Both', treatmentIds: ['a', 'b'], percent: '10' }
  for (const [change, field] of [
    [{ taxes: [] }, 'taxes'],
    [{ depositPercent: '101' }, 'depositPercent'],
    [{ depositPercent: 'ten' }, 'depositPercent'],
    [{ wornPercent: '-5' }, 'wornPercent'],
    [{ heavyPercent: 'much' }, 'heavyPercent'],
    [{ payWithinDays: -1 }, 'payWithinDays'],
    [{ cashStepMinor: 0 }, 'cashStepMinor'],
    [{ labourMinor: -1 }, 'labourMinor'],
    [{ invoiceSeries: '' }, 'invoiceSeries'],
    [{ creditSeries: 'INV' }, 'creditSeries'],
    [{ extras: [extra, { ...extra, key: 'b' }] }, 'extras.1.name'],
    [{ extras: [{ ...extra, priceMinor: 0 }] }, 'extras.0.priceMinor'],
    [{ packages: [{ ...pack, treatmentIds: ['a', 'a'] }] }, 'packages.0.treatmentIds'],
    [{ packages: [{ ...pack, percent: '-1' }] }, 'packages.0.percent'],
  ] as const)
    await expect(
      saveMoneyRules(desk, { ...rules, ...structuredClone(change) } as typeof rules),
    ).rejects.toMatchObject({ field })
})
