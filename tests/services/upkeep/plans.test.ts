import { beforeEach, expect, it } from 'vitest'
import { prepareBatch } from '../../../main/services/reminders/prepare.ts'
import { archivePlan, getVisit, savePlan } from '../../../main/services/upkeep/plans.ts'
import { type ReminderDesk, reminderDesk } from '../reminders/reminderDesk.ts'
import { agree } from './coatedCar.ts'

let desk: ReminderDesk['desk']
let vehicleId: string
beforeEach(async () => {
  const made = await reminderDesk(1)
  desk = made.desk
  vehicleId = made.shop.vehicles[0]!
})

const plan = () => ({
  vehicleId,
  kind: 'inspection' as const,
  title: 'yearly look',
  rule: 'FREQ=YEARLY',
  anchor: { to: 'date' as const, on: '2026-04-28' },
  earlyDays: 10,
  lateDays: 5,
})
const row = (id: string) => desk.store.read.upkeepPlan.findUniqueOrThrow({ where: { id } })

it('changes its name and window on the version that was seen; its rule and anchor stay', async () => {
  const { id } = await savePlan(desk, plan())
  expect(await row(id)).toMatchObject({
    anchorTo: 'date',
    anchorOn: '2026-04-28',
    kind: 'inspection',
    version: 1,
  })
  const edit = { ...plan(), id, version: 1, title: ' spring look ', earlyDays: 3, lateDays: 4 }
  await savePlan(desk, { ...edit, rule: 'FREQ=MONTHLY', anchor: { to: 'date', on: '2026-06-01' } })
  expect(await row(id)).toMatchObject({
    title: 'spring look',
    earlyDays: 3,
    lateDays: 4,
    rule: 'FREQ=YEARLY',
    anchorOn: '2026-04-28',
    version: 2,
  })
  await expect(savePlan(desk, edit)).rejects.toMatchObject({ code: 'stale' })
  await expect(archivePlan(desk, { id, version: 1 })).rejects.toMatchObject({ code: 'stale' })
})

it('counted from the last visit keeps what it was counted from at first', async () => {
  const anchor = { to: 'last-done', since: '2026-03-02', event: 'the coating' } as const
  const { id } = await savePlan(desk, { ...plan(), anchor })
  expect(await row(id)).toMatchObject({
    anchorTo: 'last-done',
    anchorOn: '2026-03-02',
    anchorEvent: 'the coating',
  })
})

it.each([
  ['title', { title: '  ' }],
  ['rule', { rule: 'FREQ=DAILY;BYMONTH=2;BYMONTHDAY=30' }],
  ['rule', { rule: 'FREQ=YEARLY;INTERVAL=9000' }],
  ['rule', { rule: 'FREQ=DAILY;BYHOUR=9,17' }],
  ['anchor.on', { anchor: { to: 'date' as const, on: '1850-01-01' } }],
  ['earlyDays', { earlyDays: -1 }],
  ['lateDays', { lateDays: 367 }],
  ['vehicleId', { vehicleId: 'none' }],
])('is refused by its %s: %o', async (field, change) => {
  await expect(savePlan(desk, { ...plan(), ...change })).rejects.toMatchObject({ name: 'Refusal', field })
})

it('ended, withdraws what is written about it and lets the places go', async () => {
  await agree(desk, vehicleId)
  const { id } = await savePlan(desk, plan())
  expect(await prepareBatch(desk)).toMatchObject({ written: 1 })
  await archivePlan(desk, { id, version: 1 })
  expect(await desk.store.read.message.findMany()).toMatchObject([
    { state: 'withdrawn', withdrawnBecause: 'The plan was ended.' },
  ])
  expect(await desk.store.read.job.count({ where: { status: 'held' } })).toBe(0)
  await expect(getVisit(desk, { planId: id, ruleOn: '2026-04-28' })).rejects.toMatchObject({
    field: 'planId',
  })
  const lines = await desk.store.read.auditLine.findMany({
    where: { entityId: vehicleId, entity: 'vehicle' },
  })
  expect(lines.map(line => line.act)).toEqual(expect.arrayContaining(['plan added', 'plan archived']))
})

it('shows one visit with its window, and none that the rule does not name', async () => {
  const { id: planId } = await savePlan(desk, plan())
  expect(await getVisit(desk, { planId, ruleOn: '2026-04-28' })).toMatchObject({
    firstOn: '2026-04-18',
    lastOn: '2026-05-03',
    projected: false,
    plate: 'KFR 204',
  })
  expect(await getVisit(desk, { planId, ruleOn: '2027-04-28' })).toMatchObject({ projected: true })
  await expect(getVisit(desk, { planId, ruleOn: '2026-04-29' })).rejects.toMatchObject({ field: 'ruleOn' })
})
