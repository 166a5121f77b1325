import { expect, test } from 'vitest'
import { lentKinds } from '../../../main/domain/shop/index.ts'
import { fillDemo } from '../../../main/services/demo/index.ts'
import { getJob } from '../../../main/services/job/jobView.ts'
import { makeDesk } from '../makeDesk.ts'

// A weekday, a Sunday and the night of a clock change.
test.each(['2026-04-15T13:00:00Z', '2026-04-19T16:00:00Z', '2026-11-01T06:30:00Z'])(
  'At %s somebody comes from outside in time, and each thing to lend is out with a car, to one at a time',
  async now => {
    const desk = await makeDesk(now)
    try {
      await fillDemo(desk)
      const tx = desk.store.read
      const outside = await tx.crewMember.findFirstOrThrow({ where: { noticeDays: { gt: 0 } } })
      const [comes, ...more] = await tx.job.findMany({
        where: { steps: { some: { crew: { some: { crewId: outside.id } } } } },
      })
      expect(more).toEqual([])
      expect(comes?.status).toBe('booked')
      // Booked at least so many days before.
      expect(comes!.dropOffAt - comes!.createdAt).toBeGreaterThanOrEqual(outside.noticeDays * 1440)

      const loans = await tx.jobLoan.findMany({ include: { lendable: true, job: true } })
      expect(new Set(loans.map(({ lendable }) => lendable.kind))).toEqual(new Set(lentKinds))
      for (const { job } of loans) {
        const view = await getJob(desk, { id: job.id })
        expect(view.lent.length).toBeGreaterThan(0)
        expect(view.conflicts).toEqual([])
      }
      const cars = loans.filter(({ lendable }) => lendable.kind === 'loan car').map(({ job }) => job)
      expect(cars).toHaveLength(2)
      const [first, second] = cars.sort((a, b) => a.dropOffAt - b.dropOffAt)
      expect(second!.dropOffAt).toBeGreaterThanOrEqual(first!.handoverAt)
    } finally {
      await desk.close()
    }
  },
)
