import { describe, expect, it } from 'vitest'
import { getMailSettings, saveMailSettings } from '../../../main/services/desk/mailSettings.ts'
import { upkeepTick } from '../../../main/services/reminders/automatic.ts'
import { retryMessage } from '../../../main/services/reminders/messageActs.ts'
import { batch } from '../../../main/services/reminders/messages.ts'
import { runOutbox } from '../../../main/services/reminders/outboxRun.ts'
import { oneApproved, says } from './mailDesk.ts'
import { change, message } from './reminderDesk.ts'

describe('a server that', () => {
  it('accepts: sent once, however often the outbox runs', async () => {
    const { desk, server, id } = await oneApproved()
    await Promise.all([runOutbox(desk), runOutbox(desk), runOutbox(desk)])
    await runOutbox(desk)
    expect(server.letters).toHaveLength(1)
    expect(await message(desk, id)).toMatchObject({ state: 'sent', attempts: 1, unanswered: 0 })
  })

  // RFC 5321 section 4.2.1: 4yz is a transient answer. Section 4.5.4.1: retry after at least 30 minutes (from memory).
  it('defers: tried again half an hour later, then an hour, until it takes it', async () => {
    let left = 2
    const { desk, id } = await oneApproved({
      onRcptTo: (_, __, done) => (left-- > 0 ? done(says(451)) : done()),
    })
    expect(await runOutbox(desk)).toMatchObject({ sent: 0, waiting: 1 })
    expect(await message(desk, id)).toMatchObject({
      state: 'approved',
      attempts: 1,
      notBeforeAt: desk.now() + 30,
      words: expect.stringContaining('try again later'),
    })
    desk.setNow('2026-04-15T14:29:00Z')
    expect(await runOutbox(desk)).toMatchObject({ waiting: 0 })
    desk.setNow('2026-04-15T14:30:00Z')
    await runOutbox(desk)
    expect(await message(desk, id)).toMatchObject({ attempts: 2, notBeforeAt: desk.now() + 60 })
    desk.setNow('2026-04-15T15:30:00Z')
    expect(await runOutbox(desk)).toMatchObject({ sent: 1 })
    expect(await message(desk, id)).toMatchObject({ state: 'sent', words: null })
  })

  it('rejects: failed with its words, and the desk may try again', async () => {
    let taken = false
    const { desk, id } = await oneApproved({ onRcptTo: (_, __, done) => (taken ? done() : done(says(550))) })
    expect(await runOutbox(desk)).toMatchObject({ failed: 1 })
    const failed = await message(desk, id)
    expect(failed).toMatchObject({ state: 'failed', failure: { code: 'refused' } })
    expect(await runOutbox(desk)).toMatchObject({ sent: 0 })
    taken = true
    await retryMessage(desk, failed)
    expect(await runOutbox(desk)).toMatchObject({ sent: 1 })
  })

  it('hangs before it has the letter: it never left, and waits', async () => {
    const { desk, id } = await oneApproved({ onRcptTo: () => {} })
    expect(await runOutbox(desk, { patience: 1_500 })).toMatchObject({ sent: 0, waiting: 1 })
    expect(await message(desk, id)).toMatchObject({ state: 'approved', unanswered: 0 })
  })

  it('hangs with the letter in hand: it may have arrived, and the desk is told', async () => {
    const { desk, id } = await oneApproved({
      onData: stream => {
        stream.resume()
      },
    })
    await runOutbox(desk, { patience: 1_500 })
    expect(await message(desk, id)).toMatchObject({ state: 'approved', unanswered: 1 })
    expect(await batch(desk)).toMatchObject({
      possiblyTwice: 1,
      riskWords: expect.stringContaining('may arrive twice'),
    })
  })

  it('drops the line after DATA: sent again under the same id, or left to the desk, as the shop chose', async () => {
    let drop = true
    const ids: string[] = []
    const { desk, server, id } = await oneApproved({
      onData(stream, session, done) {
        let text = ''
        stream.on('data', chunk => (text += String(chunk)))
        stream.on('end', () => {
          ids.push(/^Message-ID:\s+(<[^>]+>)/im.exec(text)![1]!)
          if (!drop) return done(null, 'taken')
          const { _socket } = [...connections()].find(each => each.session.id === session.id)!
          _socket.destroy()
        })
      },
    })
    const connections = () =>
      (
        server.server as unknown as {
          connections: Set<{ session: { id: string }; _socket: { destroy(): void } }>
        }
      ).connections
    await runOutbox(desk)
    expect(await message(desk, id)).toMatchObject({ state: 'approved', unanswered: 1 })
    drop = false
    desk.setNow('2026-04-15T15:00:00Z')
    await runOutbox(desk)
    expect(await message(desk, id)).toMatchObject({ state: 'sent', unanswered: 1 })
    expect(ids).toHaveLength(2)
    expect(ids[0]).toBe(ids[1])
  })

  it('drops the line after DATA, and the shop would rather ask: it stops as failed', async () => {
    const { desk, id } = await oneApproved({
      onData(stream) {
        stream.resume()
      },
    })
    await change(desk, { crashRisk: 'ask' })
    await runOutbox(desk, { patience: 1_500 })
    expect(await message(desk, id)).toMatchObject({
      state: 'failed',
      failure: { code: 'unknown' },
      unanswered: 1,
    })
    expect(await runOutbox(desk)).toMatchObject({ sent: 0 })
  })

  it('demands a safe connection that cannot be had: nothing goes out, nothing is lost, and it says so', async () => {
    const { desk, server, id } = await oneApproved()
    const { hasPassword: _, ...settings } = (await getMailSettings(desk))!
    await saveMailSettings(desk, { ...settings, security: 'starttls' })
    expect(await runOutbox(desk)).toMatchObject({ sent: 0, waiting: 1 })
    expect(await message(desk, id)).toMatchObject({ state: 'approved', attempts: 0 })
    expect((await batch(desk)).stopped).toContain('safe connection')
    expect(server.letters).toHaveLength(0)
  })

  it('does not take the password: stopped for all, tried again by itself only after a while', async () => {
    let right = false
    let asked = 0
    const { desk, id } = await oneApproved({
      authOptional: false,
      allowInsecureAuth: true,
      onAuth: (auth, _, done) => {
        asked++
        return right ? done(null, { user: auth.username }) : done(new Error('Invalid username or password'))
      },
    })
    const { hasPassword: _, ...settings } = (await getMailSettings(desk))!
    await saveMailSettings(desk, { ...settings, user: 'ashdown', password: 'wrong' })
    await upkeepTick(desk)
    expect((await batch(desk)).stopped).toContain('password')
    expect(await message(desk, id)).toMatchObject({ state: 'approved', attempts: 0 })
    const before = asked
    await upkeepTick(desk)
    expect(asked).toBe(before)
    right = true
    desk.setNow('2026-04-15T14:20:00Z')
    await upkeepTick(desk)
    expect(await message(desk, id)).toMatchObject({ state: 'sent' })
    expect((await batch(desk)).stopped).toBeNull()
  })
})
