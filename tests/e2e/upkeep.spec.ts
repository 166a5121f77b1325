import ICAL from 'ical.js'
import { startMailServer, type TestMailServer } from '../outbox/mailServer.ts'
import { expect, expectAccessible, test } from './fixtures.ts'
import { pageApi } from './pageApi.ts'
import { Board } from './pages/Board.ts'
import { Reminders } from './pages/Reminders.ts'
import { mailAt } from './shops/mailAt.ts'
import { addKeeper, setUpUpkeepShop } from './shops/upkeepShop.ts'

// Tuesday 14 April 2026, 09:30 on the shop's clock: within the hours at which owners may be written to.
test.use({ shopNow: '2026-04-14T08:30:00Z' })

let mail: TestMailServer
let turnsAway = true
test.beforeAll(async () => {
  mail = await startMailServer({
    onRcptTo(address, _session, done) {
      // RFC 5321, 4.2.3: 550, mailbox unavailable, is for good.
      if (turnsAway && address.address === 'cosima@example.com')
        done(Object.assign(new Error('no such mailbox'), { responseCode: 550 }))
      else done()
    },
  })
})
test.afterAll(() => mail.close())

test('a morning batch of three: one edited, one refused, one fails and is retried; a reply becomes a booking', async ({
  desk,
  shop,
}) => {
  const api = pageApi(desk)
  await test.step('three cars whose toppers come due, and a mail server', async () => {
    const { topperId } = await setUpUpkeepShop(api)
    const owners = ['Ansel Mirrow', 'Bryn Okafor', 'Cosima Reyl']
    for (const [i, name] of owners.entries())
      await addKeeper(api, topperId, {
        name,
        plate: `QHV 20${i}`,
        phone: `+1 202 555 011${i}`,
        email: `${name.split(' ')[0]!.toLowerCase()}@example.com`,
        laidOn: `2025-10-2${i}`,
        days: 182,
        agrees: ['email'],
      })
    await mailAt(api, mail.port)
  })

  await test.step('who is due is listed with the reason', async () => {
    await shop.enter(desk, '/upkeep')
    const row = desk.getByRole('row', { name: /QHV 200/ })
    await expect(row).toContainText('every 182 days, counted from the topper on 20 October 2025')
    await expect(desk.getByRole('img', { name: /Visits of the coming year by week/ })).toBeVisible()
    await expectAccessible(desk)
  })

  await test.step('weeks are found for all visits, and nothing is changed', async () => {
    await desk.getByRole('button', { name: 'Even out the weeks' }).click()
    const spread = desk.getByRole('region', { name: 'Even out the weeks' })
    await expect(spread).toContainText(/Every visit is aimed at its best week|aimed at another week/)
    await spread.getByRole('button', { name: 'Leave it as it is' }).click()
    await expect(spread).toBeHidden()
  })

  const reminders = new Reminders(desk)
  await test.step('three drafts are written, each with two times', async () => {
    await desk.getByRole('link', { name: 'Reminders' }).click()
    await reminders.write.click()
    await expect(reminders.list.getByRole('link')).toHaveCount(3)
    await expect(desk.getByText('Marketing messages are subject to local law')).toBeVisible()
    await expectAccessible(desk)
  })

  await test.step('one is edited and approved, one refused, one approved as it is', async () => {
    const first = await reminders.open('QHV 200', 'Ansel Mirrow')
    await expect(first.getByRole('button', { name: /^They take it/ })).toHaveCount(2)
    await first.getByRole('button', { name: 'Edit the words' }).click()
    const text = first.getByLabel('Text', { exact: true })
    await text.fill(`${await text.inputValue()}\n\nThe kettle is on.`)
    await first.getByRole('button', { name: 'Save the words' }).click()
    await expect(reminders.said).toContainText('words saved')
    const again = await reminders.open('QHV 200', 'Ansel Mirrow')
    await expect(again.getByRole('article')).toContainText('The kettle is on.')
    await again.getByRole('button', { name: 'Approve', exact: true }).click()
    await expect(reminders.row('QHV 200')).toContainText('approved')
    const second = await reminders.open('QHV 201', 'Bryn Okafor')
    await second.getByRole('button', { name: 'Refuse' }).click()
    await expect(reminders.row('QHV 201')).toContainText('withdrawn')
    const third = await reminders.open('QHV 202', 'Cosima Reyl')
    await third.getByRole('button', { name: 'Approve', exact: true }).click()
    await expect(reminders.row('QHV 202')).toContainText('approved')
  })

  await test.step('one goes out, one is turned away, and goes out when tried again', async () => {
    await reminders.send.click()
    await expect(reminders.row('QHV 200')).toContainText('sent')
    await expect(reminders.row('QHV 202')).toContainText('failed')
    expect(mail.letters.map(letter => letter.to)).toEqual([['ansel@example.com']])
    const third = await reminders.open('QHV 202', 'Cosima Reyl')
    await expect(third.getByText('Not sent')).toBeVisible()
    await expectAccessible(desk)
    turnsAway = false
    await third.getByRole('button', { name: 'Try again' }).click()
    await expect(reminders.row('QHV 202')).toContainText('approved')
    await reminders.send.click()
    await expect(reminders.row('QHV 202')).toContainText('sent')
    expect(mail.letters.map(letter => letter.to)).toEqual([['ansel@example.com'], ['cosima@example.com']])
  })

  const proposed =
    await test.step('the mail is read: the words, the way out, and the times it proposes', async () => {
      const [letter] = mail.letters
      const words = letter!.parts.find(part => part.type === 'text/plain')!.bytes.toString('utf8')
      expect(words).toContain('Dear Ansel Mirrow')
      expect(words).toContain('The kettle is on.')
      expect(letter!.headers['list-unsubscribe']).toBe('<mailto:desk@quillhaven.example.com?subject=stop>')
      const file = letter!.parts.find(part => part.type === 'text/calendar')!.bytes.toString('utf8')
      const events = new ICAL.Component(ICAL.parse(file)).getAllSubcomponents('vevent')
      const starts = events.map(event => new ICAL.Event(event).startDate.toJSDate().getTime())
      expect(starts).toHaveLength(2)
      return starts.map(ms => Temporal.Instant.fromEpochMilliseconds(ms).toZonedDateTimeISO('Europe/London'))
    })
  /** A stay that begins then: what is more than six days off bears its date. */
  const from = (time: Temporal.ZonedDateTime) => {
    const part = (options: Intl.DateTimeFormatOptions) => time.toLocaleString('en-GB', options)
    const date = `( ${part({ day: 'numeric', month: 'long' })},)?`
    return new RegExp(
      `, ${part({ weekday: 'short' })}${date} ${part({ hour: '2-digit', minute: '2-digit' })} to `,
    )
  }

  await test.step('both times stand on the board, held', async () => {
    const names = await staysOnBoard('QHV 200')
    expect(names.filter(name => name.includes('held, not confirmed'))).toHaveLength(2)
    for (const time of proposed) expect(names).toContainEqual(expect.stringMatching(from(time)))
  })

  await test.step('the owner answers, and in two clicks it is a booking', async () => {
    await shop.enter(desk, '/upkeep/reminders')
    const first = await reminders.open('QHV 200', 'Ansel Mirrow')
    await first
      .getByRole('button', { name: /^They take it/ })
      .nth(1)
      .click()
    await expect(reminders.said).toContainText('QHV 200 booked for')
    await reminders.open('QHV 200', 'Ansel Mirrow')
    await expect(reminders.message('Ansel Mirrow').getByRole('link', { name: '✓ booked' })).toBeVisible()
    const [only, ...others] = await staysOnBoard('QHV 200')
    expect(only).toMatch(from(proposed[1]!))
    expect(only).not.toContain('held, not confirmed')
    expect(others).toEqual([])
    await shop.enter(desk, '/upkeep')
    await expect(
      desk.getByRole('row', { name: /QHV 200/ }).getByRole('link', { name: /^job \d+/ }),
    ).toBeVisible()
    await shop.enter(desk, '/upkeep/results')
    await expect(desk.getByRole('row', { name: /E-mail/ })).toContainText('1 of 2')
    await expectAccessible(desk)
  })

  /** The names of a car's stays on the board, this week and the three after it. */
  async function staysOnBoard(plate: string): Promise<string[]> {
    await shop.enter(desk, '/')
    const board = new Board(desk)
    await board.show('Week')
    const names: string[] = []
    for (let week = 0; week < 4; week++) {
      await board.settled()
      const here = await board
        .staysOf(plate)
        .evaluateAll(all => all.map(each => each.getAttribute('aria-label')))
      for (const name of here) if (name && !names.includes(name)) names.push(name)
      await board.later()
    }
    return names
  }
})
