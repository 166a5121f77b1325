import ICAL from 'ical.js'
import { afterAll, beforeAll, expect, it } from 'vitest'
import { createFeed, listFeeds, revokeFeed } from '../../main/services/reminders/feeds.ts'
import { bookJob } from '../services/bookJob.ts'
import { duePlan } from '../services/reminders/reminderDesk.ts'
import { type TestShop, testShop } from '../services/testShop.ts'
import { agree } from '../services/upkeep/coatedCar.ts'
import { type DoorHost, makeDoor } from './makeDoor.ts'

let door: DoorHost
let shop: TestShop
beforeAll(async () => {
  door = await makeDoor('2026-04-15T14:00:00Z')
  shop = await testShop(door.desk)
  await bookJob(door.desk, shop, { treatments: ['topped'] })
  await agree(door.desk, shop.vehicles[1]!)
  await duePlan(door.desk, shop.vehicles[1]!)
})
afterAll(() => door.close())

const get = (path: string) => fetch(`${door.address}${path}`)
const eventsOf = (file: string) =>
  new ICAL.Component(ICAL.parse(file)).getAllSubcomponents('vevent').map(each => new ICAL.Event(each))

it('a feed tells bays and visits to whoever has its link, and no private detail', async () => {
  const { path } = await createFeed(door.desk, { name: 'Office wall', details: false })
  const answer = await get(path)
  expect(answer.status).toBe(200)
  expect(answer.headers.get('content-type')).toBe('text/calendar; charset=utf-8')
  expect(answer.headers.get('cache-control')).toBe('no-store')
  const file = await answer.text()
  for (const secret of ['KFR', 'LOW 771', 'Vale', 'Birk', 'Wendrel', 'job', 'topper'])
    expect(file, secret).not.toContain(secret)
  const events = eventsOf(file)
  expect(events.some(event => /^Bay \d taken$/.test(event.summary))).toBe(true)
  expect(events.find(event => event.summary === 'yearly inspection due')!.startDate.toString()).toBe(
    '2026-04-28',
  )
  expect(new Set(events.map(event => event.uid)).size).toBe(events.length)
})

it('with details chosen it names cars and owners; the token is kept nowhere', async () => {
  const { path } = await createFeed(door.desk, { name: 'Phone', details: true })
  const summaries = eventsOf(await (await get(path)).text()).map(event => event.summary)
  expect(summaries.some(each => each.includes('KFR 204') && each.includes('Ines Vale'))).toBe(true)
  expect(summaries).toContain('yearly inspection: LOW 771 (Toma Birk)')
  const kept = JSON.stringify(await door.desk.store.read.feedToken.findMany())
  expect(kept).not.toContain(path.slice('/feed/'.length, -'.ics'.length))
})

it('a closed feed answers nobody, and the desk’s own file wants the cookie', async () => {
  const { id, path } = await createFeed(door.desk, { name: 'Old', details: false })
  await revokeFeed(door.desk, { id })
  expect((await get(path)).status).toBe(404)
  expect((await listFeeds(door.desk)).map(feed => feed.name)).not.toContain('Old')
  expect((await get('/documents/calendar.ics')).status).toBe(401)
  const own = await fetch(`${door.address}/documents/calendar.ics${door.link}&details=yes`, {
    headers: door.headers,
  })
  expect(await own.text()).toContain('KFR 204')
})
