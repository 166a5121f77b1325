import { say } from '../../domain/language/index.ts'
import { Refusal, refuse } from '../../domain/refusal.ts'
import { type Channel, fill, messageId, newMessage } from '../../domain/upkeep/index.ts'
import type { Tx } from '../../store/store.ts'
import { act, type Desk } from '../desk/desk.ts'
import { shopOf } from '../desk/shopView.ts'
import { type Owner, openChannels, reachOf } from '../upkeep/reach.ts'
import { type UpkeepRules, upkeepRules } from '../upkeep/settings.ts'
import type { VisitView } from '../upkeep/visits.ts'
import { mergeFor } from './mergeFor.ts'
import { type FoundTimes, findTimes, holdTimes } from './proposedTimes.ts'
import { templatesOf, wordsIn } from './templates.ts'

/** How often times are looked for anew where another desk takes them in that very moment. */
const attempts = 3

/**
 * Writes the draft of a visit's next reminder: two times found and held, the words of the owner's language filled in.
 * A template that is not named is the first of its channel. The places and the message are saved together, so that an
 * interruption leaves no place held for a message that is not there.
 * @throws Refusal where the owner has not agreed to the channel or nothing can be proposed.
 */
export async function writeReminder(
  desk: Desk,
  visit: VisitView,
  channel: Channel,
  templateId?: string,
): Promise<{ id: string }> {
  const rules = await upkeepRules(desk.store.read)
  await assertAgreed(desk.store.read, desk.now(), visit, channel)
  for (let attempt = 1; ; attempt++) {
    const found = await findTimes(desk, rules, visit)
    try {
      return await saveReminder(desk, rules, visit, channel, templateId, found)
    } catch (error) {
      const taken = error instanceof Refusal && error.code === 'stale' && error.field === 'plan'
      if (!taken || attempt === attempts) throw error
    }
  }
}

function saveReminder(
  desk: Desk,
  rules: UpkeepRules,
  visit: VisitView,
  channel: Channel,
  templateId: string | undefined,
  found: FoundTimes,
): Promise<{ id: string }> {
  return act(desk, async (tx, audit, nowAt) => {
    await assertUnwritten(tx, visit)
    const { owner, address } = await assertAgreed(tx, nowAt, visit, channel)
    const template = (await templatesOf(tx)).find(each =>
      templateId === undefined ? each.channel === channel : each.id === templateId,
    )
    if (template?.channel !== channel)
      refuse('missing', { templateId }, say('There is no template for this channel; write one.'))
    const { language, words } = wordsIn(template, owner.language ?? rules.language, rules.language)
    const { kind, title, dueOn, planId, ruleOn, customerId, vehicleId } = visit
    const vehicle = await tx.vehicle.findUniqueOrThrow({
      where: { id: vehicleId },
      include: { customer: true },
    })
    const tryNo = (visit.reminder?.tryNo ?? 0) + 1
    const slots = await holdTimes(tx, audit, nowAt, found)
    const draft = newMessage({
      id: messageId({ visitId: visit.key, channel, tryNo }, await mailDomain(tx)),
      personId: customerId,
      carId: vehicleId,
      visitId: visit.key,
      channel,
      address,
      tryNo,
      ...fill(words, await mergeFor(tx, rules, { vehicle, kind, title, dueOn, slots, language })),
    })
    const { id } = await tx.message.create({
      data: {
        mailId: draft.id,
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
        slots: slots.map(slot => ({ ...slot })),
        state: draft.state,
        createdAt: nowAt,
      },
    })
    audit({ act: 'reminder written', entity: 'message', entityId: id, detail: { planId, ruleOn, channel } })
    return { id }
  })
}

/** The owner and where the channel goes. @throws Refusal where they have not agreed to it. */
async function assertAgreed(
  tx: Tx,
  nowAt: number,
  visit: VisitView,
  channel: Channel,
): Promise<{ owner: Owner; address: string }> {
  const reach = (await reachOf(tx, [visit.customerId])).get(visit.customerId)
  const address = reach?.address[channel]
  if (!reach || !address || !openChannels(reach, nowAt).includes(channel))
    refuse(
      'no-consent',
      { channel },
      say('{customerName} has not agreed to be reached this way; record the consent first.', {
        customerName: visit.customerName,
      }),
    )
  return { owner: reach.owner, address }
}

/** One message about a visit at a time, whichever desk writes it. */
async function assertUnwritten(tx: Tx, { planId, ruleOn, reminder }: VisitView): Promise<void> {
  const last = await tx.message.findFirst({ where: { planId, ruleOn }, orderBy: { tryNo: 'desc' } })
  if ((last?.id ?? null) !== (reminder?.messageId ?? null) || isUnderWay(last))
    refuse('stale', { ruleOn }, say('A reminder of this visit is written already; look at the batch.'))
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
