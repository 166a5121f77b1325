import { Refusal } from '../../domain/refusal.ts'
import { type Channel, fill, languageFor, messageId, newMessage } from '../../domain/upkeep/index.ts'
import type { JsonObject } from '../../store/json.ts'
import type { Tx } from '../../store/store.ts'
import type { Desk } from '../desk/desk.ts'
import { shopOf } from '../desk/shopView.ts'
import { openChannels, reachOf } from '../upkeep/reach.ts'
import { releaseSlots } from '../upkeep/releaseSlots.ts'
import { upkeepRules } from '../upkeep/settings.ts'
import type { VisitView } from '../upkeep/views.ts'
import { holdSlots } from './holdSlots.ts'
import { mergeFor } from './mergeFor.ts'
import { templatesOf } from './templates.ts'

/**
 * Writes the draft of a visit's next reminder: two times found and held, the words of the owner's language filled in.
 * A template that is not named is the first of its channel.
 * @throws Refusal where the owner has not agreed to the channel or nothing can be proposed.
 */
export async function writeReminder(
  desk: Desk,
  visit: VisitView,
  channel: Channel,
  templateId?: string,
): Promise<{ id: string }> {
  const tx = desk.store.read
  const nowAt = desk.now()
  const rules = await upkeepRules(tx)
  const { zone } = await shopOf(tx)
  const reach = (await reachOf(tx, [visit.customerId])).get(visit.customerId)!
  const address = reach.address[channel]
  if (address === null || !openChannels(reach, nowAt).includes(channel))
    throw new Refusal(
      'no-consent',
      'channel',
      channel,
      `${visit.customerName} has not agreed to be reached this way; record the consent first.`,
    )
  const template = (await templatesOf(tx)).find(each =>
    templateId === undefined ? each.channel === channel : each.id === templateId,
  )
  if (template?.channel !== channel)
    throw new Refusal(
      'missing',
      'templateId',
      templateId,
      'There is no template for this channel; write one.',
    )
  const language = languageFor(
    Object.keys(template.words),
    reach.owner.language ?? rules.language,
    rules.language,
  )
  const vehicle = await tx.vehicle.findUniqueOrThrow({
    where: { id: visit.vehicleId },
    include: { customer: true },
  })
  const tryNo = (visit.reminder?.tryNo ?? 0) + 1
  const mailId = messageId(
    { visitId: `${visit.planId} ${visit.ruleOn}`, channel, tryNo },
    await mailDomain(tx),
  )
  const slots = await holdSlots(desk, rules, zone, visit)
  try {
    const { kind, title, dueOn, planId, ruleOn, customerId, vehicleId } = visit
    const words = fill(
      template.words[language]!,
      await mergeFor(tx, rules, { vehicle, kind, title, dueOn, slots, language }),
    )
    const draft = newMessage({
      id: mailId,
      personId: customerId,
      carId: vehicleId,
      visitId: visit.key,
      channel,
      address,
      tryNo,
      ...words,
    })
    return await desk.store.transact({ who: desk.who, at: nowAt }, async (tx, audit) => {
      await assertUnwritten(tx, visit)
      const { id } = await tx.message.create({
        data: {
          mailId,
          customerId,
          vehicleId,
          planId,
          ruleOn,
          channel,
          address,
          tryNo,
          templateId: template.id,
          language,
          subject: draft.subject,
          body: draft.body,
          unfilled: [...draft.unfilled],
          slots: slots as unknown as JsonObject[],
          state: draft.state,
          createdAt: nowAt,
        },
      })
      audit({ act: 'reminder written', entity: 'message', entityId: id, detail: { planId, ruleOn, channel } })
      return { id }
    })
  } catch (error) {
    // Places held for words that came to nothing are free again.
    await desk.store.transact({ who: desk.who, at: nowAt }, tx => releaseSlots(tx, { slots }, nowAt))
    throw error
  }
}

/** One message about a visit at a time, whichever desk writes it. */
async function assertUnwritten(tx: Tx, { planId, ruleOn, reminder }: VisitView): Promise<void> {
  const last = await tx.message.findFirst({ where: { planId, ruleOn }, orderBy: { tryNo: 'desc' } })
  if ((last?.id ?? null) !== (reminder?.messageId ?? null) || isUnderWay(last))
    throw new Refusal(
      'stale',
      'ruleOn',
      ruleOn,
      'A reminder of this visit is written already; look at the batch.',
    )
}

/** A message that has still to go out, or waits for the desk. */
export function isUnderWay(message: { state: string } | null): boolean {
  return message !== null && ['draft', 'approved', 'sending', 'failed'].includes(message.state)
}

/** The domain of message ids: that of the address letters come from, so that nobody else can make the same. */
async function mailDomain(tx: Tx): Promise<string> {
  const address = (await tx.mailSettings.findFirst())?.fromAddress ?? (await shopOf(tx)).email ?? ''
  // RFC 2606: a name that will never be anybody's.
  return address.split('@')[1] ?? 'reminders.invalid'
}
