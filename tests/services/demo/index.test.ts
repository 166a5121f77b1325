import { expect, test } from 'vitest'
import { zonedOf } from '../../../main/domain/calendar/index.ts'
import { type CureProfile, checkProfile } from '../../../main/domain/cure/index.ts'
import { checkTreatment, type ProductKind, type TreatmentStep } from '../../../main/domain/shop/index.ts'
import { boardRange } from '../../../main/services/board/board.ts'
import { fillDemo } from '../../../main/services/demo/index.ts'
import { listTreatments } from '../../../main/services/setUp/treatments.ts'
import { brokenLaws } from '../floorLaws.ts'
import { makeDesk, type TestDesk } from '../makeDesk.ts'

async function filled(now: string): Promise<TestDesk> {
  const desk = await makeDesk(now)
  await fillDemo(desk)
  return desk
}

// Every weekday, in and out of hours, at the ends of a year and around both clock changes of New York.
const nows = [
  '2026-04-15T07:40:00Z',
  '2026-04-16T12:00:00Z',
  '2026-04-17T21:59:00Z',
  '2026-04-18T14:30:00Z',
  '2026-04-19T16:00:00Z',
  '2026-04-20T12:01:00Z',
  '2026-04-21T18:07:00Z',
  '2026-03-08T06:59:00Z',
  '2026-11-01T06:30:00Z',
  '2027-01-01T04:59:00Z',
]

test.each(nows)('At %s the demo is a sound shop in full swing', async now => {
  const desk = await filled(now)
  try {
    expect(await brokenLaws(desk)).toEqual([])
    const nowAt = desk.now()
    const from = zonedOf(nowAt, 'America/New_York').toPlainDate().subtract({ days: 7 })
    const { bays, stays } = await boardRange(desk, { fromDate: from.toString(), days: 16 })
    expect(bays).toHaveLength(4)
    const jobs = new Map(stays.map(stay => [stay.jobId, stay]))
    expect(jobs.size).toBeGreaterThanOrEqual(30)
    const curing = stays.filter(stay =>
      stay.blocks.some(
        block => block.cure?.actual && block.cure.coatEndAt <= nowAt && stay.status === 'inShop',
      ),
    )
    expect(new Set(curing.map(stay => stay.jobId)).size).toBeGreaterThanOrEqual(2)
    expect(new Set(stays.filter(stay => stay.standing === 'late').map(stay => stay.jobId)).size).toBe(1)
    expect(stays.filter(stay => stay.conflict !== null)).toEqual([])
    const statuses = new Set([...jobs.values()].map(stay => stay.status))
    expect([...statuses].sort()).toEqual(['booked', 'handedOver', 'held', 'inShop'])
    // Nothing has happened yet that is still to come.
    const times = await desk.store.read.jobStep.aggregate({
      _max: { actualStartAt: true, actualEndAt: true },
    })
    expect(Math.max(times._max.actualStartAt!, times._max.actualEndAt!)).toBeLessThanOrEqual(nowAt)
    expect((await desk.store.read.auditLine.aggregate({ _max: { at: true } }))._max.at).toBeLessThanOrEqual(
      nowAt,
    )
  } finally {
    await desk.close()
  }
})

test('It holds what it promises: crew, treatments, products, customers', async () => {
  const desk = await filled('2026-04-15T13:00:00Z')
  try {
    const tx = desk.store.read
    expect(await tx.crewMember.count()).toBe(4)
    const products = await tx.product.findMany()
    const profiles = products.flatMap(product => (product.cureProfile ? [product.cureProfile] : []))
    expect(profiles).toHaveLength(6)
    for (const profile of profiles)
      expect(() => checkProfile(profile as unknown as CureProfile)).not.toThrow()
    const treatments = await listTreatments(desk)
    expect(treatments).toHaveLength(10)
    const known = products.map(({ id, name, kind, cureProfile }) => ({
      id,
      name,
      kind: kind as ProductKind,
      cureProfile: cureProfile as unknown as CureProfile | null,
    }))
    for (const treatment of treatments) {
      expect(() =>
        checkTreatment({ ...treatment, steps: treatment.steps as TreatmentStep[] }, known, 600),
      ).not.toThrow()
      expect(Object.values(treatment.prices).every(price => price > 0)).toBe(true)
    }
    const customers = await tx.customer.findMany({ include: { vehicles: true } })
    expect(customers).toHaveLength(40)
    for (const { phone, email, vehicles } of customers) {
      // Numbers 555-0100 to 555-0199 are kept for fiction. Source: North American Numbering Plan, 555 line numbers.
      expect(phone).toMatch(/^\+1\d{3}55501\d{2}$/)
      expect(email).toMatch(/@example\.com$/)
      expect(vehicles.length).toBeGreaterThanOrEqual(1)
    }
    expect(new Set(customers.flatMap(customer => customer.vehicles.map(vehicle => vehicle.plate))).size).toBe(
      42,
    )
  } finally {
    await desk.close()
  }
})

test('The same now gives the same shop, and a shop that is there is left alone', async () => {
  const one = await filled('2026-04-15T13:00:00Z')
  const two = await filled('2026-04-15T13:00:00Z')
  try {
    const rows = (desk: TestDesk) =>
      desk.store.read.job.findMany({
        orderBy: { number: 'asc' },
        include: {
          steps: { orderBy: { position: 'asc' }, include: { crew: { orderBy: { crewId: 'asc' } } } },
        },
      })
    expect(await rows(two)).toEqual(await rows(one))
    await expect(fillDemo(one)).rejects.toMatchObject({ code: 'shop-there' })
    expect(await one.store.read.customer.count()).toBe(40)
  } finally {
    await one.close()
    await two.close()
  }
})
