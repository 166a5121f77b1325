import { expect, test } from 'vitest'
import { cancelJob } from '../../../main/services/job/jobActs.ts'
import { getJob } from '../../../main/services/job/jobView.ts'
import { erasePerson } from '../../../main/services/leaving/erase.ts'
import { getInvoice } from '../../../main/services/money/electronic.ts'
import { billed, moneyShop, rowOf } from '../money/sample.ts'

test('An erasure warns that invoices lose the name on them; figures and numbers stay', async () => {
  const made = await moneyShop()
  const { desk } = made
  const { jobId, invoiceId } = await billed(made)
  const { version } = await getJob(desk, { id: jobId })
  await cancelJob(desk, { id: jobId, version, reason: 'sold' })
  const { customer } = await rowOf(made, jobId)
  const erase = (accepted?: true) =>
    erasePerson(desk, { id: customer.id, version: customer.version, ...(accepted && { accepted }) })
  await expect(erase()).rejects.toMatchObject({
    message: expect.stringMatching(
      /\n1 invoice or credit note loses the name and address on it; every figure and number stays/,
    ),
  })
  const before = await getInvoice(desk, { id: invoiceId })
  await erase(true)
  const after = await getInvoice(desk, { id: invoiceId })
  expect([before.buyer.name, after.buyer.name]).toEqual(['Ines Vale', 'erased person'])
  expect([after.name, after.withTaxMinor]).toEqual([before.name, before.withTaxMinor])
  expect(after.buyer.address).not.toContain('Quarry')
})
