import { existsSync, mkdtempSync, readdirSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { startMailServer, type TestMailServer } from '../outbox/mailServer.ts'
import { expect, expectAccessible, test } from './fixtures.ts'
import { pageApi } from './pageApi.ts'
import { Backups } from './pages/Backups.ts'
import { remindersWritten } from './remindersWritten.ts'
import { mailAt } from './shops/mailAt.ts'
import { addKeeper, setUpUpkeepShop } from './shops/upkeepShop.ts'

// Tuesday 14 April 2026, 09:30 on the shop's clock: within the hours at which owners may be written to.
test.use({ shopNow: '2026-04-14T08:30:00Z' })

let mail: TestMailServer
let place: string
test.beforeAll(async () => {
  mail = await startMailServer({})
  place = mkdtempSync(join(tmpdir(), 'lustrum-place-'))
})
test.afterAll(async () => {
  await mail.close()
  rmSync(place, { recursive: true, force: true })
})

test('a shop whose folder is gone comes back from the second place, and writes to nobody twice', async ({
  desk,
  shop,
}) => {
  test.setTimeout(240_000)
  const api = pageApi(desk)
  const backups = new Backups(desk)
  let jobNumber = 0
  let sheetOf = ''
  const sheet = Buffer.from('%PDF-1.7\nstartxref\n9\n%%EOF\n')

  await test.step('a shop with a booking, and a reminder approved', async () => {
    const { topperId, treatmentId } = await setUpUpkeepShop(api)
    sheetOf = topperId
    await api.safety.uploadSheet.mutate({
      productId: topperId,
      fileName: 'topper.pdf',
      revisedOn: '2025-11-03',
      base64: sheet.toString('base64'),
    })
    const { vehicleId } = await addKeeper(api, topperId, {
      name: 'Ansel Mirrow',
      plate: 'QHV 200',
      phone: '+1 202 555 0110',
      email: 'ansel@example.com',
      laidOn: '2025-10-20',
      days: 182,
      agrees: ['email'],
    })
    await mailAt(api, mail.port)
    const asked = { treatmentIds: [treatmentId], condition: 'good' as const }
    const offers = await api.booking.offers.query({ ...asked, sizeClass: 'medium', finish: 'gloss' })
    const { soonest } = offers
    if (!soonest.feasible) throw new Error(soonest.reasons.join(' '))
    const held = await api.booking.hold.mutate({ ...asked, vehicleId, plan: soonest.plan })
    await api.booking.confirm.mutate({ jobId: held.jobId, version: held.version })
    jobNumber = (await api.jobs.get.query({ id: held.jobId })).number
    await remindersWritten(api)
    await api.reminders.approveAll.mutate({})
  })

  await test.step('the second place is named, and a copy made', async () => {
    await shop.enter(desk, '/settings/backups')
    await expect(backups.line).toHaveText(/No copy has been made yet|on this computer only/)
    await backups.place.fill(join(place, 'not there'))
    await backups.save.click()
    await expect(backups.place).toHaveAccessibleDescription(/is not there: plug the disk in/)
    await backups.place.fill(place)
    await backups.save.click()
    await expect(desk.getByText('lies on the same disk')).toBeVisible()
    await backups.make.click()
    await expect(backups.line).toHaveText(`Last good copy: today at 09:30, on this computer and in ${place}.`)
    await expectAccessible(desk)
  })

  await test.step('the reminder goes out after that', async () => {
    await api.reminders.send.mutate()
    expect(mail.letters).toHaveLength(1)
  })

  await test.step('the folder goes: nothing more is saved, and the board says so', async () => {
    rmSync(shop.dataDir, { recursive: true })
    await expect(api.customers.save.mutate({ name: 'Lost' })).rejects.toThrow(/Nothing of this was saved/)
    await desk.goto(`${shop.address}/`)
    await expect(backups.warnings).toContainText('is not there any more')
    await expectAccessible(desk)
  })

  await test.step('a day later, on an empty installation, the copy is found, looked into and restored', async () => {
    await desk.goto('about:blank')
    await shop.restart('2026-04-15T08:30:00Z')
    await shop.enter(desk, '/welcome')
    await backups.offer.click()
    await backups.whereFrom.fill(place)
    await backups.lookThere.click()
    await backups.newest.click()
    await backups.seeWhatItHolds.click()
    await expect(desk.getByText(/^In the copy: Quillhaven Coatings, 1 job, 1 car, 1 customer/)).toBeVisible()
    await expect(desk.getByText('Here now: no shop.')).toBeVisible()
    await expectAccessible(desk)
    await backups.restore.click()
    await expect(backups.ready).toContainText('Close Lustrum and start it again')
    await desk.goto('about:blank')
    await shop.restart('2026-04-15T08:31:00Z')
    expect(existsSync(join(shop.dataDir, 'restore'))).toBe(false)
  })

  await test.step('yesterday’s booking is there and its data sheet, and the reminder is asked about, not sent', async () => {
    await shop.enter(desk)
    await expect(backups.warnings).toContainText('1 reminder waiting then may have gone out since')
    const { jobs } = await api.jobs.find.query({ text: String(jobNumber) })
    expect(jobs).toMatchObject([{ number: jobNumber, status: 'booked' }])
    const filed = await desk.evaluate(async path => {
      const { links } = JSON.parse(localStorage.getItem('lustrum-door') ?? '{}')
      return (await fetch(`${path}?door=${links}`)).text()
    }, `/documents/sheet/${sheetOf}`)
    expect(filed).toBe(sheet.toString())
    await api.reminders.send.mutate()
    expect(mail.letters).toHaveLength(1)
    expect((await api.reminders.batch.query()).messages.map(({ state }) => state)).toEqual(['failed'])
    expect(readdirSync(place).filter(name => name.endsWith('.lustrum-copy'))).not.toEqual([])
  })
})
