import { expect, it } from 'vitest'
import { idsIn, namesIn } from '../../../main/services/history/names.ts'
import type { AuditLine } from '../../../main/store/rows.ts'
import { bookJob } from '../bookJob.ts'
import { makeDesk } from '../makeDesk.ts'
import { shelfShop } from '../shelf/shelfShop.ts'

const line = (entityId: string, detail: object = {}) =>
  ({ id: 'x', at: 0, who: '', act: '', entity: '', entityId, detail }) as unknown as AuditLine

it('names each kind of row as people call it, whether a line is about it or points to it', async () => {
  const desk = await makeDesk()
  const shop = await shelfShop(desk)
  const { read } = desk.store
  const job = await bookJob(desk, shop, { treatments: ['wash'] })
  const ids = await desk.store.transact({ who: 'test', at: 0 }, async tx => {
    const { id: supplierId } = await tx.supplier.create({
      data: { name: 'Nordhaus', weekdays: [], closedOn: [], leadMeanDays: 2, leadSdDays: 1 },
    })
    const order = await tx.purchaseOrder.create({
      data: { number: 41, supplierId, status: 'draft', createdAt: 0 },
    })
    const { customerId } = await tx.vehicle.findFirstOrThrow()
    const car = { customerId, plate: '', sizeClass: 'small' }
    const [made, half] = [
      await tx.vehicle.create({ data: { ...car, make: 'Velda', model: 'Two' } }),
      await tx.vehicle.create({ data: { ...car, model: 'Three' } }),
    ]
    return { supplierId, orderId: order.id, made: made.id, half: half.id }
  })
  const [customer, product, treatment, bay, crew, vehicle] = await Promise.all([
    read.customer.findFirstOrThrow(),
    read.product.findFirstOrThrow(),
    read.treatment.findFirstOrThrow(),
    read.bay.findFirstOrThrow(),
    read.crewMember.findFirstOrThrow(),
    read.vehicle.findFirstOrThrow({ where: { plate: { not: '' } } }),
  ])
  const lines = [
    line(customer.id, { productId: product.id, deep: [{ treatmentId: treatment.id }, bay.id] }),
    line('1', { crew: [crew.id], vehicleId: vehicle.id, made: ids.made, half: ids.half }),
    line(job.id, { supplierId: ids.supplierId, orderId: ids.orderId, text: `about ${customer.id}` }),
    line('gone', { of: '00000000-0000-0000-0000-000000000000' }),
  ]
  expect(Object.fromEntries(await namesIn(read, idsIn(lines)))).toEqual({
    ...Object.fromEntries([customer, product, treatment, bay, crew].map(({ id, name }) => [id, name])),
    [vehicle.id]: vehicle.plate,
    [ids.made]: 'Velda Two',
    [ids.half]: 'Three',
    [job.id]: `job ${job.number}`,
    [ids.supplierId]: 'Nordhaus',
    [ids.orderId]: 'order 41',
  })
})

it('names bottles by their number, and nothing that no line speaks of', async () => {
  const desk = await makeDesk()
  const shop = await shelfShop(desk)
  const { productId, ...lot } = await desk.store.transact({ who: 'test', at: 0 }, async tx => {
    const size = await tx.containerSize.findFirstOrThrow({ where: { productId: shop.coating } })
    return tx.lot.create({
      data: { number: 977, productId: shop.coating, sizeId: size.id, receivedOn: '2026-04-01' },
    })
  })
  expect(Object.fromEntries(await namesIn(desk.store.read, idsIn([line(lot.id)])))).toEqual({
    [lot.id]: 'bottle 977',
  })
  expect((await namesIn(desk.store.read, idsIn([]))).size).toBe(0)
  expect(productId).toBe(shop.coating)
})
