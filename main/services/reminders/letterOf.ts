import { say } from '../../domain/language/index.ts'
import { unsubscribeHeaders } from '../../domain/upkeep/index.ts'
import { calendarFile } from '../../outbox/calendarFile.ts'
import type { Letter } from '../../outbox/mail.ts'
import type { Message } from '../../store/rows.ts'
import type { Tx } from '../../store/store.ts'
import type { Desk } from '../desk/desk.ts'
import type { Sender } from '../desk/mailSettings.ts'
import { shopOf } from '../desk/shopView.ts'
import { speaking, spokenFor } from '../desk/speaking.ts'
import { slotsOf } from '../upkeep/messageRows.ts'
import { upkeepRules } from '../upkeep/settings.ts'
import { stopAddressOf } from './mergeFor.ts'

/** A reminder as an e-mail: plain text, a calendar file with the times proposed, and the way out in the header. */
export async function letterOf(
  desk: Desk,
  row: Pick<Message, 'mailId' | 'address' | 'subject' | 'body' | 'language' | 'slots' | 'vehicleId'>,
  sender: Sender,
): Promise<Letter> {
  const tx = desk.store.read
  const file = await speaking(spokenFor(row.language), () => slotsFile(tx, row, desk.now()))
  const stop = (await stopAddressOf(tx, await upkeepRules(tx))) ?? sender.from.address
  return {
    from: sender.from,
    to: row.address,
    subject: row.subject,
    text: row.body,
    messageId: row.mailId.replace(/^<|>$/g, ''),
    headers: unsubscribeHeaders({ mailto: `${stop}?subject=stop` }),
    attachments:
      file === null
        ? []
        : [
            {
              name: 'proposed-times.ics',
              type: 'text/calendar; charset=utf-8; method=PUBLISH',
              bytes: new TextEncoder().encode(file),
            },
          ],
  }
}

/** The proposed times as a calendar file; null where none is proposed. Tentative: only the owner's answer books one. */
export async function slotsFile(
  tx: Tx,
  row: Pick<Message, 'mailId' | 'subject' | 'slots' | 'vehicleId'>,
  nowAt: number,
): Promise<string | null> {
  const slots = slotsOf(row)
  if (slots.length === 0) return null
  const shop = await shopOf(tx)
  const { plate } = await tx.vehicle.findUniqueOrThrow({ where: { id: row.vehicleId } })
  return calendarFile(
    shop.name,
    nowAt,
    slots.map(({ jobId, dropOffAt, handoverAt }, i) => ({
      id: `${jobId}@${row.mailId.split('@').at(-1)?.replace('>', '')}`,
      summary: say('{name}: {subject} (time {i} of {slots})', {
        name: shop.name,
        subject: row.subject,
        i: i + 1,
        slots: slots.length,
      }),
      description: say(
        'Bring {plate} at the beginning; it is ready at the end. Held for you until you answer or the hold runs out.',
        { plate: plate || say('the car') },
      ),
      location: shop.address ?? undefined,
      time: { fromAt: dropOffAt, toAt: handoverAt },
      status: 'tentative' as const,
    })),
    'publish',
  )
}
