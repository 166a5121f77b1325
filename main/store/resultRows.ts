import { Prisma } from './generated/client.ts'
import type { Tx } from './store.ts'

interface Counts<Channel> {
  readonly channel: Channel
  readonly templateId: string
  readonly reminded: number
  readonly booked: number
  readonly came: number
}

/**
 * Visits that were written about (since a minute), by the channel and template of the last reminder, which is the one said
 * to have brought them. Counted by SQLite, on an index that holds all it asks for: a hundred thousand reminders have
 * their texts, and none of those is read. A template keeps its channel, so that they are put in order by it alone.
 */
export async function remindedCounts<Channel extends string>(
  tx: Tx,
  fromAt: number | null,
): Promise<Counts<Channel>[]> {
  const sent = Prisma.sql`m.sentAt is not null and m.sentAt >= ${fromAt ?? 0}`
  const reminded = await tx.$queryRaw<{ channel: Channel; templateId: string; count: bigint }[]>`
    select channel, templateId, count(*) as count from (
      select m.channel, m.templateId, max(m.tryNo) from Message m where ${sent} group by m.planId, m.ruleOn
    ) group by templateId`
  const booked = await tx.$queryRaw<{ last: string | null; count: bigint; came: bigint }[]>`
    select last, count(*) as count, sum(came) as came from (
      select b.came, (
        select json_array(m.channel, m.templateId) from Message m
        where m.planId = b.planId and m.ruleOn = b.ruleOn and ${sent} order by m.tryNo desc limit 1
      ) as last from (
        select e.planId, e.ruleOn, j.status <> 'booked' as came, max(e.seq)
        from UpkeepEntry e join Job j on j.id = e.jobId
        where e.what = 'booked' and e.voidedAt is null and j.status in ('booked', 'inShop', 'handedOver')
        group by e.planId, e.ruleOn
      ) b
    ) group by last`
  const standing = new Map(booked.map(({ last, count, came }) => [last, { count, came }]))
  return reminded.map(({ channel, templateId, count }) => {
    const its = standing.get(JSON.stringify([channel, templateId]))
    return {
      channel,
      templateId,
      reminded: Number(count),
      booked: Number(its?.count ?? 0),
      came: Number(its?.came ?? 0),
    }
  })
}
