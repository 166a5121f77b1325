/** What is read by the page, counted by the database or kept beside gives what reading everything gives. */
import { expect, it } from 'vitest'
import { resultsSummary } from '../../main/services/reminders/results.ts'
import { lotRows } from '../../main/store/lotRows.ts'
import { firstReceipts } from '../../main/store/useRows.ts'
import { yearsNowAt } from '../bench/years/fillYears.ts'
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
}, 60_000)

it('knows of each container what its moves leave, and of each product its first receipt', async () => {
  const { desk } = await yearsShop()
  const { read: tx } = desk.store
  const sums = await tx.stockMove.groupBy({ by: ['lotId'], _sum: { centi: true } })
  const left = new Map(sums.flatMap(each => (each._sum.centi ? [[each.lotId, each._sum.centi]] : [])))
  expect(left.size).toBeLessThan(sums.length)
  expect(new Map((await lotRows(tx)).map(lot => [lot.id, lot.centi]))).toEqual(left)
  const firsts = await tx.lot.groupBy({ by: ['productId'], _min: { receivedOn: true } })
  expect(await firstReceipts(tx)).toEqual(new Map(firsts.map(each => [each.productId, each._min.receivedOn])))
}, 60_000)
