import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { minuteOf } from '../../../main/domain/calendar/index.ts'
import { Refusal } from '../../../main/domain/refusal.ts'
import { messageId } from '../../../main/domain/upkeep/index.ts'
import { upkeepTick } from '../../../main/services/reminders/automatic.ts'
import { giveConsent, withdrawConsent } from '../../../main/services/reminders/consents.ts'
import { sendQuestion } from '../../../main/services/reminders/gate.ts'
import { editMessage, retryMessage, sentByHand } from '../../../main/services/reminders/messageActs.ts'
import { messageView } from '../../../main/services/reminders/messages.ts'
import { runOutbox } from '../../../main/services/reminders/outboxRun.ts'
import { recordOutcome } from '../../../main/services/reminders/outcomes.ts'
import { prepareBatch } from '../../../main/services/reminders/prepare.ts'
import { saveTemplate } from '../../../main/services/reminders/templates.ts'
import { carSold, undoAct } from '../../../main/services/upkeep/acts.ts'
import { agree, iso } from '../upkeep/coatedCar.ts'
import { mailDesk } from './mailDesk.ts'
import { approvedBatch, change, duePlan } from './reminderDesk.ts'

type Way = 'email' | 'text' | 'letter' | 'call'
type Step =
  | { do: 'give' | 'withdraw' | 'sold' | 'unsold' | 'write' | 'stop-address'; car: number; way: Way }
  | { do: 'run' | 'tick' | 'hand' | 'retry'; car: number; way: Way }

const step: fc.Arbitrary<Step & { waitMin: number }> = fc.record({
  do: fc.constantFrom(
    'give',
    'give',
    'withdraw',
    'sold',
    'unsold',
    'write',
    'write',
    'write',
    'write',
    'stop-address',
    'run',
    'run',
    'run',
    'tick',
    'hand',
    'hand',
    'retry',
  ),
  car: fc.nat(2),
  way: fc.constantFrom('email', 'email', 'text', 'letter', 'call'),
  // Minutes to two days, so that nights and a Sunday are met.
  waitMin: fc.integer({ min: 1, max: 900 }),
})

/** What the owners really said, kept beside the app: nothing here is the app's own. */
interface Truth {
  given: Map<string, number>
  taken: Map<string, number>
  addressTaken: number
  sold: Set<number>
}

describe('nobody is written to against their word', () => {
  it('whatever is done in whatever order, by outbox, hand or timer', async () => {
    let sent = 0
    await fc.assert(
      fc.asyncProperty(fc.array(step, { minLength: 25, maxLength: 60 }), async steps => {
        const wrong: string[] = []
        const truth: Truth = { given: new Map(), taken: new Map(), addressTaken: 0, sold: new Set() }
        const carOf = new Map<string, number>()
        const check = (car: number, way: Way) => {
          sent++
          const key = `${car} ${way}`
          const given = truth.given.get(key) ?? 0
          if (given === 0) wrong.push(`${key}: never agreed`)
          if ((truth.taken.get(key) ?? 0) >= given) wrong.push(`${key}: withdrawn`)
          // Cars 0 and 1 share their e-mail address; car 0's owner asked for it to be left alone.
          if (way === 'email' && car < 2 && truth.addressTaken >= given)
            wrong.push(`${key}: address withdrawn`)
          if (truth.sold.has(car)) wrong.push(`${key}: sold`)
          const now = Temporal.Instant.fromEpochMilliseconds(desk.now() * 60_000).toZonedDateTimeISO(
            'America/New_York',
          )
          if (way !== 'letter' && (now.hour < 9 || now.hour >= 18 || now.dayOfWeek === 7))
            wrong.push(`${key}: at ${now}`)
        }
        const { desk, server, shop } = await mailDesk({
          onData(stream, _, done) {
            let text = ''
            stream.on('data', chunk => {
              text += String(chunk)
            })
            stream.on('end', () => {
              check(carOf.get(/^Message-ID:\s+(<[^>]+>)/im.exec(text)![1]!)!, 'email')
              done(null, 'taken')
            })
          },
        })
        await change(desk, { gapDays: 0, maxTries: 20, dailyLimit: 1_000 })
        const cars = shop.vehicles
        const owners: string[] = []
        const plans: string[] = []
        for (const [i, email] of ['shared@example.com', 'Shared@example.com', 'own@example.com'].entries()) {
          owners.push(await agree(desk, cars[i]!, [], email))
          for (const channel of ['email', 'text'] as const) {
            await giveConsent(desk, { customerId: owners[i]!, channel, source: 'form', wording: 'said' })
            truth.given.set(`${i} ${channel}`, desk.now())
          }
          plans.push(await duePlan(desk, cars[i]!, '2026-05-20'))
        }
        let tries = 0
        const sales = new Map<number, string>()
        for (const { do: what, car, way, waitMin } of steps) {
          desk.setNow(iso(desk.now() + waitMin))
          const at = desk.now()
          const said = { customerId: owners[car]!, source: 'form', wording: 'said' }
          try {
            if (what === 'give') {
              await giveConsent(desk, { ...said, channel: way })
              truth.given.set(`${car} ${way}`, at)
            } else if (what === 'withdraw') {
              await withdrawConsent(desk, { ...said, channel: way })
              truth.taken.set(`${car} ${way}`, at)
            } else if (what === 'stop-address') {
              await withdrawConsent(desk, {
                ...said,
                customerId: owners[0]!,
                channel: 'email',
                address: 'SHARED@example.com',
              })
              truth.taken.set('0 email', at)
              truth.addressTaken = at
            } else if (what === 'sold') {
              const { actId } = await carSold(desk, { vehicleId: cars[car]! })
              if (!sales.has(car)) sales.set(car, actId)
              else await undoAct(desk, { actId })
              truth.sold.add(car)
            } else if (what === 'unsold') {
              const actId = sales.get(car)
              if (actId) await undoAct(desk, { actId })
              sales.delete(car)
              truth.sold.delete(car)
            } else if (what === 'write') {
              tries++
              const mailId = messageId(
                { visitId: `${plans[car]} 2026-05-20`, channel: way, tryNo: tries },
                'ashdown.example.com',
              )
              carOf.set(mailId, car)
              await desk.store.transact({ who: 'test', at }, tx =>
                tx.message.create({
                  data: {
                    mailId,
                    customerId: owners[car]!,
                    vehicleId: cars[car]!,
                    planId: plans[car]!,
                    ruleOn: '2026-05-20',
                    channel: way,
                    address:
                      way === 'email'
                        ? car === 2
                          ? 'own@example.com'
                          : 'shared@example.com'
                        : '+12125550143',
                    tryNo: 1,
                    templateId: 'x',
                    language: 'en',
                    subject: 'x',
                    body: 'x',
                    unfilled: [],
                    slots: [],
                    state: 'approved',
                    createdAt: at,
                  },
                }),
              )
            } else if (what === 'run') await runOutbox(desk)
            else if (what === 'tick') await upkeepTick(desk)
            else {
              const rows = await desk.store.read.message.findMany({ where: { vehicleId: cars[car]! } })
              const row = rows.find(each =>
                what === 'retry'
                  ? each.state === 'failed'
                  : each.state === 'approved' && each.channel !== 'email',
              )
              if (row && what === 'retry') await retryMessage(desk, row)
              if (row && what === 'hand') {
                await sentByHand(desk, row)
                check(car, row.channel as Way)
              }
            }
          } catch (error) {
            if (!(error instanceof Refusal)) throw error
          }
        }
        await desk.close()
        await server.close()
        expect(wrong).toEqual([])
      }),
      // Each run is a shop of its own: a failure is told as it was found, not made smaller for minutes.
      { numRuns: 30, endOnFailure: true },
    )
    // The sequences do send: a gate that is always shut would pass too.
    expect(sent).toBeGreaterThan(20)
  }, 240_000)
})

describe('a header field', () => {
  it('cannot be begun by a name, a template, an edit or an address', async () => {
    const { desk, server, car } = await mailDesk()
    const customerId = await agree(desk, car())
    await duePlan(desk, car())
    // Past every form: as if the database had been written by something else.
    await desk.store.transact({ who: 'test', at: desk.now() }, tx =>
      tx.customer.update({
        where: { id: customerId },
        data: { name: 'Ines\r\nBcc: all@elsewhere.example.com' },
      }),
    )
    const { written, notWritten } = await prepareBatch(desk)
    expect(written).toBe(0)
    expect(notWritten[0]!.why).toContain('line end')
    // The places held for it are free again.
    expect(await desk.store.read.job.count({ where: { status: 'held' } })).toBe(0)
    await desk.store.transact({ who: 'test', at: desk.now() }, tx =>
      tx.customer.update({ where: { id: customerId }, data: { name: 'Ines Vale' } }),
    )
    await expect(
      (async () =>
        saveTemplate(desk, {
          id: 'reminder-email',
          name: 'Ours',
          channel: 'email',
          words: { en: { subject: 'Due\nBcc: all@elsewhere.example.com', body: 'x' } },
          version: 0,
        }))(),
    ).rejects.toMatchObject({ code: 'header-unsafe' })
    const [approved] = await approvedBatch(desk)
    await expect(
      (async () => editMessage(desk, { ...approved!, subject: 'a\r\nBcc: b@example.com', body: 'x' }))(),
    ).rejects.toMatchObject({ code: 'header-unsafe' })
    // And where one got into a message all the same, the gate holds it.
    await desk.store.transact({ who: 'test', at: desk.now() }, tx =>
      tx.message.update({
        where: { id: approved!.id },
        data: { subject: 'a\r\nBcc: b@elsewhere.example.com' },
      }),
    )
    expect(await runOutbox(desk)).toMatchObject({ sent: 0 })
    expect(await messageView(desk.store.read, desk.now(), approved!.id)).toMatchObject({ state: 'withdrawn' })
    expect(server.letters).toEqual([])
  })
})

describe('an answer', () => {
  it('that comes before a message went out withdraws it', async () => {
    const { desk, server, car } = await mailDesk()
    await agree(desk, car())
    await duePlan(desk, car())
    const [approved] = await approvedBatch(desk)
    expect(await recordOutcome(desk, { messageId: approved!.id, outcome: 'no' })).toMatchObject({
      state: 'withdrawn',
      outcome: 'no',
    })
    expect(await runOutbox(desk)).toMatchObject({ sent: 0 })
    expect(server.letters).toEqual([])
  })
})

it('counts for the day what went out since the shop’s own midnight, not since that of UTC', async () => {
  const { desk, car } = await mailDesk()
  for (const [i, address] of ['first@example.com', 'second@example.com'].entries()) {
    await agree(desk, car(i), ['email'], address)
    await duePlan(desk, car(i))
  }
  const [first, second] = await approvedBatch(desk)
  const sentAt = minuteOf(Temporal.Instant.from('2026-04-15T21:30Z'))
  await desk.store.transact({ who: 'test', at: sentAt }, tx =>
    tx.message.update({ where: { id: first!.id }, data: { state: 'sent', sentAt } }),
  )
  const row = await desk.store.read.message.findUniqueOrThrow({ where: { id: second!.id } })
  const sendsAt = async (time: string) =>
    (await sendQuestion(desk.store.read, row, minuteOf(Temporal.Instant.from(time)))).sends.map(
      each => each.at,
    )
  // 21:00 in New York, 01:00 of the next day in UTC; then a minute after midnight there.
  expect(await sendsAt('2026-04-16T01:00:00Z')).toEqual([sentAt])
  expect(await sendsAt('2026-04-16T04:01:00Z')).toEqual([])
})
