/** What is read by the page, counted by the database or kept beside gives what reading everything gives. */
import { expect, it } from 'vitest'
import { costMoves, type Move } from '../../main/domain/shelf/index.ts'
import { resultsSummary } from '../../main/services/reminders/results.ts'
import { takeBackMove } from '../../main/services/shelf/takeBack.ts'
import { jobCost, shelfValue } from '../../main/services/shelf/value.ts'
import { lotRows } from '../../main/store/lotRows.ts'
import { ledgerMarks } from '../../main/store/useRows.ts'
import { yearsNowAt } from '../bench/years/fillYears.ts'
import { jobCosts } from '../domain/shelf/jobCosts.ts'
import { yearsShop } from './yearsShop.ts'

it('counts what reminders brought as one by one', async () => {
  const { desk } = await yearsShop(database => {
    // Some visits of the demo's bookings were written about twice, the second time by call.
    database.exec(`
      insert into Message (id, mailId, customerId, vehicleId, planId, ruleOn, channel, address, tryNo, templateId, language,
        subject, body, unfilled, slots, state, sentAt, createdAt)
      select 'again-' || e.seq || t.tryNo, 'again-' || e.seq || t.tryNo, v.customerId, e.vehicleId, e.planId, e.ruleOn,
        t.channel, 'a', t.tryNo, 'reminder-' || t.channel, 'en', '', '', '[]', '[]', 'sent', ${yearsNowAt} - 9000 + t.tryNo, 1
      from UpkeepEntry e join Vehicle v on v.id = e.vehicleId
        join (select 1 as tryNo, 'email' as channel union select 2, 'call') t on e.seq % 2 = 0 or t.tryNo = 1
      where e.what = 'booked' and e.planId is not null
        and not exists (select 1 from Message m where m.planId = e.planId and m.ruleOn = e.ruleOn)`)
  })
  const { read: tx } = desk.store
  for (const fromAt of [undefined, yearsNowAt - 90 * 1440]) {
    const messages = await tx.message.findMany({
      where: { sentAt: { not: null, gte: fromAt ?? 0 } },
      orderBy: [{ tryNo: 'asc' }, { id: 'asc' }],
    })
    const entries = await tx.upkeepEntry.findMany({
      where: { what: 'booked', voidedAt: null },
      orderBy: { seq: 'asc' },
      include: { job: true },
    })
    const came = new Map<string, boolean>()
    for (const { planId, ruleOn, job } of entries)
      if (job && ['booked', 'inShop', 'handedOver'].includes(job.status))
        came.set(`${planId} ${ruleOn}`, job.status !== 'booked')
    const last = new Map(messages.map(each => [`${each.planId} ${each.ruleOn}`, each]))
    const counts = new Map<string, [reminded: number, booked: number, came: number]>()
    for (const [key, { channel, templateId }] of last) {
      const line = counts.get(`${channel} ${templateId}`) ?? [0, 0, 0]
      counts.set(`${channel} ${templateId}`, line)
      line[0]++
      if (came.has(key)) line[1]++
      if (came.get(key)) line[2]++
    }
    expect([...counts.values()].some(([, booked]) => booked > 0)).toBe(true)
    const { lines } = await resultsSummary(desk, { fromAt })
    expect(
      new Map(
        lines.map(line => [
          `${line.channel} ${line.templateId}`,
          [line.reminded, line.booked.count, line.came.count],
        ]),
      ),
    ).toEqual(counts)
  }
})

it('knows of each container what its moves leave, and of each product its first receipt and its last move', async () => {
  const { desk } = await yearsShop()
  const { read: tx } = desk.store
  const sums = await tx.stockMove.groupBy({ by: ['lotId'], _sum: { centi: true } })
  const left = new Map(sums.flatMap(each => (each._sum.centi ? [[each.lotId, each._sum.centi]] : [])))
  expect(left.size).toBeLessThan(sums.length)
  expect(new Map((await lotRows(tx)).map(lot => [lot.id, lot.centi]))).toEqual(left)
  const firsts = await tx.lot.groupBy({ by: ['productId'], _min: { receivedOn: true } })
  const lasts = await tx.stockMove.groupBy({ by: ['productId'], _max: { seq: true } })
  const seqOf = new Map(lasts.map(each => [each.productId, each._max.seq]))
  const firstOf = new Map(firsts.map(each => [each.productId, each._min.receivedOn]))
  const counted = await tx.shelfProduct.findMany()
  expect(firstOf.size).toBeLessThan(counted.length)
  expect(await ledgerMarks(tx)).toEqual(
    new Map(
      counted.map(({ productId: id }) => [
        id,
        { seq: seqOf.get(id) ?? null, receivedOn: firstOf.get(id) ?? null },
      ]),
    ),
  )
})

it('costs the shelf and every job as the whole ledger does, also where something was put right since', async () => {
  const { desk } = await yearsShop()
  const { read: tx } = desk.store
  const compare = async () => {
    const rows = await tx.stockMove.findMany({ orderBy: { seq: 'asc' } })
    const moves = rows.map(
      ({ seq, correctsSeq, ...row }) =>
        ({ ...row, seq, id: String(seq), correctsId: correctsSeq && String(correctsSeq) }) as unknown as Move,
    )
    const value = await shelfValue(desk)
    for (const method of ['average', 'fifo'] as const) {
      const costs = new Map(
        [...Map.groupBy(moves, move => move.productId)].map(([id, own]) => [id, costMoves(own, method)]),
      )
      const minor = `${method}Minor` as const
      for (const { productId, onHand, [minor]: worth } of value.products) {
        const { leftCenti = 0, leftValueMinor = 0 } = costs.get(productId) ?? {}
        // Kept sums and the whole ledger add in another order.
        expect(onHand * 100).toBeCloseTo(leftCenti, 6)
        expect(worth).toBe(leftValueMinor)
      }
      for (const wasted of value.writeOffs) {
        const move = moves.find(
          each => each.kind === 'waste' && each.at === wasted.at && each.why === wasted.why,
        )
        expect(wasted[minor]).toBe(-(costs.get(wasted.productId)?.byMove.get(move?.id ?? '') ?? 0))
      }
      const jobs = new Map(jobCosts(moves, costs).map(each => [each.jobId, each]))
      const recent = new Set(
        moves.filter(each => each.kind === 'use' && each.at > yearsNowAt - 60 * 1440).map(each => each.jobId),
      )
      recent.delete(null)
      expect(value.jobs.length).toBeGreaterThanOrEqual(recent.size)
      for (const job of value.jobs) expect(job[minor]).toBe(jobs.get(job.jobId)?.costMinor)
      const [old] = jobs.values()
      expect((await jobCost(desk, { jobId: old?.jobId ?? '' }))?.[minor]).toBe(old?.costMinor)
    }
  }
  await compare()
  const wrong = await tx.stockMove.findMany({
    where: { kind: 'use', at: { lt: yearsNowAt - 30 * 1440 } },
    orderBy: { seq: 'desc' },
    take: 3,
  })
  for (const { seq } of wrong) await takeBackMove(desk, { seq, reason: 'read wrongly' })
  await compare()
})
