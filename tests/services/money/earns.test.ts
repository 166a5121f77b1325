import { expect, test } from 'vitest'
import { whatEarns } from '../../../main/services/money/earns.ts'
import { bookJob } from '../bookJob.ts'
import { moneyShop } from './sample.ts'

test('What a visit earned is its price without tax, less labour, over the bay hours it took', async () => {
  const { desk, shop } = await moneyShop({ labourMinor: 3_000 })
  expect((await whatEarns(desk)).whole.visits).toBe(0)
  const { id, dropOffAt } = await bookJob(desk, shop, { treatments: ['wash'] })
  const steps = await desk.store.read.jobStep.findMany({ where: { jobId: id } })
  const leftAt = dropOffAt + 120
  await desk.store.transact({ who: 'test', at: 0 }, async tx => {
    await tx.job.update({ where: { id }, data: { status: 'handedOver', arrivedAt: dropOffAt, leftAt } })
    await tx.jobStep.update({
      where: { id: steps[0]!.id },
      data: { actualStartAt: dropOffAt, actualEndAt: dropOffAt + 60 },
    })
  })
  const { treatments, crew, whole, months } = await whatEarns(desk)
  // 120.00 less an hour at 30.00; two bay hours, one of them blocked.
  const one = { revenueMinor: 12_000, labourMinor: 3_000, contributionMinor: 9_000, perBayHourMinor: 4_500 }
  expect(whole).toMatchObject({ ...one, visits: 1, bayMin: 120, blockedMin: 60, few: true })
  expect(treatments).toMatchObject([{ name: 'Hand wash', ...one }])
  expect(crew).toMatchObject([one])
  expect(months).toMatchObject([{ name: '2026-04', ...one }])
  // Whenever in the last twelve months it left, it counts once; after that no more.
  const visits = async (days: number) => {
    await desk.store.transact({ who: 'test', at: 0 }, async tx => {
      await tx.job.update({ where: { id }, data: { leftAt: desk.now() - days * 1440 } })
    })
    return (await whatEarns(desk)).whole.visits
  }
  for (const days of [1, 29, 30, 31, 60, 100, 200, 364]) expect(await visits(days)).toBe(1)
  expect(await visits(366)).toBe(0)
})

test('Extras count beside the treatments, a discount is off, and whoever only helped earned nothing', async () => {
  const { desk, shop } = await moneyShop({ labourMinor: 0 })
  const { id, dropOffAt } = await bookJob(desk, shop, { treatments: ['wash'] })
  const steps = await desk.store.read.jobStep.findMany({ where: { jobId: id }, include: { crew: true } })
  const crewId = steps[0]!.crew[0]!.crewId
  const helper = await desk.store.read.crewMember.findFirstOrThrow({ where: { id: { not: crewId } } })
  await desk.store.transact({ who: 'test', at: 0 }, async tx => {
    await tx.job.update({
      where: { id },
      data: { status: 'handedOver', arrivedAt: dropOffAt, leftAt: dropOffAt + 120 },
    })
    await tx.jobStepCrew.create({ data: { stepId: steps[0]!.id, crewId: helper.id, helps: true } })
    const charge = { jobId: id, quantity: '2', treatmentId: null }
    await tx.jobCharge.create({
      data: { ...charge, position: 0, kind: 'extra', words: 'Dog hair', amountMinor: 1_500 },
    })
    await tx.jobCharge.create({
      data: {
        ...charge,
        position: 1,
        kind: 'discount',
        words: 'Regular',
        treatmentId: shop.treatments.wash,
        amountMinor: 2_000,
      },
    })
  })
  const { treatments, crew } = await whatEarns(desk)
  expect(treatments.map(each => [each.name, each.revenueMinor]).sort()).toEqual([
    ['Extras', 3_000],
    ['Hand wash', 10_000],
  ])
  expect(crew).toHaveLength(1)
  expect(crew[0]!.name).not.toBe(helper.name)
})
