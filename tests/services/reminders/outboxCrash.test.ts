import { spawn } from 'node:child_process'
import { fileURLToPath } from 'node:url'
import { expect, it } from 'vitest'
import { messageId } from '../../../main/domain/upkeep/index.ts'
import { seeded } from '../../bench/simulation/random.ts'
import { startMailServer } from '../../outbox/mailServer.ts'
import { change, reminderDesk } from './reminderDesk.ts'

const script = fileURLToPath(new URL('sendUntilDone.ts', import.meta.url))
// Enough for every kill to find letters left to send.
const count = 50
const kills = 8

/** Owners who agreed, each with an approved message. */
async function allApproved(desk: Awaited<ReturnType<typeof reminderDesk>>['desk']): Promise<string[]> {
  await change(desk, {
    fromMin: 0,
    toMin: 1440,
    closedWeekdays: [],
    closedWithShop: false,
    dailyLimit: 10_000,
  })
  const at = desk.now()
  const numbers = Array.from({ length: count }, (_, i) => i)
  const rows = numbers.map(i => {
    const planId = `plan-${i}`
    const ruleOn = '2026-04-28'
    const mailId = messageId(
      { visitId: `${planId} ${ruleOn}`, channel: 'email', tryNo: 1 },
      'ashdown.example.com',
    )
    return { i, planId, ruleOn, mailId, owner: `owner-${i}`, car: `car-${i}`, email: `owner${i}@example.com` }
  })
  await desk.store.transact({ who: 'test', at }, async tx => {
    await tx.customer.createMany({
      data: rows.map(({ owner: id, email, i }) => ({ id, name: `Owner ${i}`, email })),
    })
    await tx.vehicle.createMany({
      data: rows.map(({ car: id, owner: customerId }) => ({
        id,
        customerId,
        plate: '',
        sizeClass: 'medium',
      })),
    })
    await tx.consent.createMany({
      data: rows.map(({ owner: customerId, email: address }) => ({
        customerId,
        address,
        channel: 'email',
        what: 'given',
        at,
        source: 'intake form',
        wording: 'yes',
        who: 'test',
      })),
    })
    await tx.upkeepPlan.createMany({
      data: rows.map(({ planId: id, car: vehicleId, ruleOn: anchorOn }) => ({
        id,
        vehicleId,
        kind: 'inspection',
        title: 'yearly inspection',
        rule: 'FREQ=YEARLY',
        anchorTo: 'date',
        anchorOn,
        earlyDays: 30,
        lateDays: 30,
        createdAt: at,
      })),
    })
    await tx.message.createMany({
      data: rows.map(({ mailId, owner: customerId, car: vehicleId, planId, ruleOn, email: address, i }) => ({
        mailId,
        customerId,
        vehicleId,
        planId,
        ruleOn,
        address,
        channel: 'email',
        tryNo: 1,
        templateId: 'reminder-email',
        language: 'en',
        subject: `Number ${i}`,
        body: 'It is time.',
        unfilled: [],
        slots: [],
        state: 'approved',
        createdAt: at,
      })),
    })
  })
  return rows.map(row => row.mailId)
}

it('fifty messages survive eight kills: none is lost, at most one a kill comes twice', async () => {
  const random = seeded(20260415)
  /** What is done when a letter arrives, before the server says OK. */
  let arrived = () => {}
  const got = new Map<string, number>()
  const server = await startMailServer({
    onData(stream, _, done) {
      let text = ''
      stream.on('data', chunk => {
        text += String(chunk)
      })
      stream.on('end', () => {
        const id = /^Message-ID:\s+(<[^>]+>)/im.exec(text)![1]!
        got.set(id, (got.get(id) ?? 0) + 1)
        arrived()
        done(null, 'taken')
      })
    },
  })
  const { desk } = await reminderDesk(server.port)
  const ids = await allApproved(desk)
  const [{ file }] = (await desk.store.read.$queryRawUnsafe('select file from pragma_database_list')) as [
    { file: string },
  ]
  let killed = 0
  for (let run = 0; ; run++) {
    const child = spawn(process.execPath, [script, file, String(desk.now() + run * 31)], {
      stdio: ['ignore', 'ignore', 'inherit'],
    })
    const ended = new Promise<string>(resolve =>
      child.once('exit', (code, signal) => resolve(signal ?? String(code))),
    )
    // Some kills fall between the letter's arrival and the OK, some a moment later, some between two letters.
    let left = 1 + Math.floor(random() * 6)
    const delayMs = Math.floor(random() * 4) * 5
    arrived = () => {
      if (killed >= kills || --left !== 0) return
      if (delayMs === 0) child.kill('SIGKILL')
      else setTimeout(() => child.kill('SIGKILL'), delayMs)
    }
    const how = await ended
    if (how === '0') break
    expect(how).toBe('SIGKILL')
    killed++
  }
  expect(killed).toBe(kills)

  const rows = await desk.store.read.message.findMany()
  const twice = [...got].filter(([, times]) => times > 1)
  const possibly = rows.reduce((sum, row) => sum + row.unanswered, 0)
  console.log(
    `${count} messages, ${killed} kills: ${got.size} arrived, ${twice.length} twice, ${possibly} told to the desk as possibly twice`,
  )
  expect(new Set(got.keys())).toEqual(new Set(ids))
  expect(rows.every(row => row.state === 'sent')).toBe(true)
  expect(Math.max(...got.values())).toBeLessThanOrEqual(1 + kills)
  expect([...got.values()].reduce((sum, times) => sum + times - 1, 0)).toBeLessThanOrEqual(kills)
  expect(possibly).toBeLessThanOrEqual(kills)
  // Each copy more was told: a message arrived at most once more often than its attempts without an answer.
  const unanswered = new Map(rows.map(row => [row.mailId, row.unanswered]))
  for (const [id, times] of got) expect(times).toBeLessThanOrEqual(1 + unanswered.get(id)!)
  await desk.close()
  await server.close()
}, 600_000)
