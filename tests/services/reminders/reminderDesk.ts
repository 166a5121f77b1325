import type { ReminderSettingsView } from '../../../main/api/views.ts'
import { saveMailSettings } from '../../../main/services/desk/mailSettings.ts'
import { approveAll } from '../../../main/services/reminders/messageActs.ts'
import type { MessageView } from '../../../main/services/reminders/messages.ts'
import { batch } from '../../../main/services/reminders/messages.ts'
import { prepareBatch } from '../../../main/services/reminders/prepare.ts'
import { getShop, updateShop } from '../../../main/services/setUp/shop.ts'
import { savePlan } from '../../../main/services/upkeep/plans.ts'
import { getUpkeepSettings, saveUpkeepSettings } from '../../../main/services/upkeep/settings.ts'
import { makeDesk, type TestDesk } from '../makeDesk.ts'
import { type TestShop, testShop } from '../testShop.ts'

export interface ReminderDesk {
  desk: TestDesk
  shop: TestShop
}

/** A shop on a Wednesday morning, 10:00 in New York, whose mail leaves through a port of this computer. */
export async function reminderDesk(port: number): Promise<ReminderDesk> {
  const desk = await makeDesk('2026-04-15T14:00:00Z')
  const shop = await testShop(desk)
  const view = (await getShop(desk))!
  await updateShop(desk, { ...view, phone: '(212) 555-0101', address: '4 Quarry Lane\nAshdown' })
  await saveMailSettings(desk, {
    host: '127.0.0.1',
    port,
    security: 'none',
    user: null,
    password: null,
    fromName: 'Ashdown Paint Care',
    fromAddress: 'hello@ashdown.example.com',
  })
  return { desk, shop }
}

/** A plan of a car with a visit due on a day. */
export async function duePlan(desk: TestDesk, vehicleId: string, on = '2026-04-28'): Promise<string> {
  const { id } = await savePlan(desk, {
    vehicleId,
    kind: 'inspection',
    title: 'yearly inspection',
    rule: 'FREQ=YEARLY',
    anchor: { to: 'date', on },
    earlyDays: 30,
    lateDays: 30,
  })
  // Without a day in the past there is no "last with us on".
  const { id: productId } = await desk.store.read.product.findFirstOrThrow({ where: { kind: 'topper' } })
  await desk.store.transact({ who: 'test', at: desk.now() }, tx =>
    tx.layer.create({ data: { vehicleId, productId, stage: 'topper', laidOn: '2025-04-28' } }),
  )
  return id
}

export async function change(desk: TestDesk, rules: Partial<ReminderSettingsView>): Promise<void> {
  await saveUpkeepSettings(desk, { ...(await getUpkeepSettings(desk)), ...rules })
}

/** Writes and approves everything that is due. */
export async function approvedBatch(desk: TestDesk): Promise<MessageView[]> {
  await prepareBatch(desk)
  await approveAll(desk)
  return (await batch(desk)).messages
}

export async function message(desk: TestDesk, id: string): Promise<MessageView> {
  return (await batch(desk)).messages.find(each => each.id === id)!
}
