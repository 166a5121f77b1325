import { beforeEach, expect, it } from 'vitest'
import { upkeepSettings } from '../../../main/services/upkeep/inputs.ts'
import {
  checkLanguage,
  getUpkeepSettings,
  saveUpkeepSettings,
  sendRules,
} from '../../../main/services/upkeep/settings.ts'
import { makeDesk, type TestDesk } from '../makeDesk.ts'
import { testShop } from '../testShop.ts'

let desk: TestDesk
beforeEach(async () => {
  desk = await makeDesk()
  await testShop(desk)
})

it('keeps what was saved, with what changed in the audit, and refuses the second of two windows', async () => {
  const before = await getUpkeepSettings(desk)
  expect(before).toMatchObject({ version: 0, holdDays: 5, maxTries: 3, automatic: false, roomShare: 0.5 })
  const saved = await saveUpkeepSettings(desk, { ...before, holdDays: 8, stopAddress: ' stop@example.com ' })
  expect(saved).toEqual({ ...before, holdDays: 8, stopAddress: 'stop@example.com', version: 1 })
  await expect(saveUpkeepSettings(desk, { ...before, holdDays: 3 })).rejects.toMatchObject({
    name: 'Refusal',
  })
  expect(await saveUpkeepSettings(desk, { ...saved, gapDays: 9 })).toMatchObject({ holdDays: 8, version: 2 })
  await expect(saveUpkeepSettings(desk, { ...saved, gapDays: 1 })).rejects.toMatchObject({ code: 'stale' })
  expect(await getUpkeepSettings(desk)).toMatchObject({ gapDays: 9, version: 2 })
  const [line] = await desk.store.read.auditLine.findMany({ where: { entity: 'upkeep settings' } })
  expect(line!.detail).toEqual({ holdDays: [5, 8], stopAddress: ['', 'stop@example.com'] })
})

it.each([
  ['level', 0.49],
  ['level', 1],
  ['roomShare', 1.1],
  ['maxTries', 0],
  ['maxTries', 21],
  ['holdDays', 0],
  ['holdDays', 61],
  ['leadDays', -1],
  ['dailyLimit', 2.5],
  ['checkUpDays', 367],
] as const)('the api takes no %s of %s', async (name, value) => {
  const settings = await getUpkeepSettings(desk)
  expect(upkeepSettings.safeParse(settings).success).toBe(true)
  const { error } = upkeepSettings.safeParse({ ...settings, [name]: value })
  expect(error?.issues.map(issue => issue.path[0])).toEqual([name])
})

it('sends no message on days the shop is closed by exception, unless it wants to', async () => {
  await desk.store.transact({ who: 'test', at: desk.now() }, tx =>
    tx.hoursException.createMany({
      data: [
        { date: '2026-05-25', hours: [] },
        { date: '2026-05-26', hours: [{ from: 600, to: 720 }] },
      ],
    }),
  )
  const rules = { ...(await getUpkeepSettings(desk)), closedDates: ['2026-12-24'] }
  const tx = desk.store.read
  expect((await sendRules(tx, rules)).hours.closedDates).toEqual(['2026-12-24', '2026-05-25'])
  expect((await sendRules(tx, { ...rules, closedWithShop: false })).hours.closedDates).toEqual(['2026-12-24'])
})

// RFC 5646, section 2.1.1: tags are the same in any capitals; the usual form is de-CH.
it('writes a language tag in its usual form and refuses what is none', () => {
  expect(checkLanguage('DE-ch')).toBe('de-CH')
  for (const wrong of ['x', 'no language!', 'de_CH', ''])
    expect(() => checkLanguage(wrong, 'spoken')).toThrow(expect.objectContaining({ field: 'spoken' }))
})
