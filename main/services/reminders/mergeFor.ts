import { addDays, atWall, dateOf, startOfDay } from '../../domain/calendar/index.ts'
import { type MergeValues, mergeValues, type PlanKind, VISIT_NAMES } from '../../domain/upkeep/index.ts'
import { showPhone } from '../../domain/vehicle/index.ts'
import type { Tx } from '../../store/store.ts'
import { shopOf } from '../desk/shopView.ts'
import type { MessageSlot } from '../upkeep/messageRows.ts'
import type { UpkeepRules } from '../upkeep/settings.ts'

export interface MergeSubject {
  readonly vehicle: {
    readonly id: string
    readonly plate: string
    readonly make: string
    readonly model: string
    readonly colour: string
    readonly customer: { readonly name: string }
  }
  readonly kind: PlanKind
  readonly title: string
  readonly dueOn: string
  readonly slots: readonly Pick<MessageSlot, 'dropOffAt' | 'heldUntilAt'>[]
  readonly language: string
}

/** How to ask for no more messages, by language; the address follows where there is one. */
const stopWords = {
  en: { write: (address: string) => `write "stop" to ${address}`, say: 'tell us' },
  de: { write: (address: string) => `„Stopp“ an ${address} schreiben`, say: 'sagen Sie es uns' },
  es: { write: (address: string) => `escriba «alto» a ${address}`, say: 'díganoslo' },
}

/** Where "no more messages" is written to: as the shop set it, else its sending address, else its address on file. */
export async function stopAddressOf(tx: Tx, rules: UpkeepRules): Promise<string | null> {
  if (rules.stopAddress !== '') return rules.stopAddress
  return (await tx.mailSettings.findFirst())?.fromAddress ?? (await shopOf(tx)).email
}

/** The values of a reminder's merge fields. */
export async function mergeFor(tx: Tx, rules: UpkeepRules, subject: MergeSubject): Promise<MergeValues> {
  const shop = await shopOf(tx)
  const { vehicle, kind, title, dueOn, slots, language } = subject
  const [base = 'en'] = language.split('-')
  const stop = Object.hasOwn(stopWords, base) ? stopWords[base as keyof typeof stopWords] : stopWords.en
  const address = await stopAddressOf(tx, rules)
  const last = await tx.job.findFirst({
    where: { vehicleId: vehicle.id, status: 'handedOver' },
    orderBy: { handoverAt: 'desc' },
  })
  const layer = await tx.layer.findFirst({ where: { vehicleId: vehicle.id }, orderBy: { laidOn: 'desc' } })
  const lastOn = last ? dateOf(last.leftAt ?? last.handoverAt, shop.zone) : (layer?.laidOn ?? null)
  const names = VISIT_NAMES[base] ?? VISIT_NAMES.en
  const values = mergeValues(
    {
      ownerName: vehicle.customer.name,
      carName: [vehicle.make, vehicle.model].filter(Boolean).join(' ') || vehicle.plate,
      plate: vehicle.plate,
      visitName: kind === 'other' ? title : (names?.[kind] ?? title),
      dueOn,
      lastOn: lastOn ?? dueOn,
      slotAts: slots.map(slot => slot.dropOffAt),
      heldUntilAt: slots[0]?.heldUntilAt ?? null,
      shopName: shop.name,
      shopPhone: shop.phone === null ? '' : showPhone(shop.phone, shop.country),
      shopAddress: oneLine(shop.address ?? ''),
      stopWay: address === null ? stop.say : stop.write(address),
    },
    language,
    shop.zone,
  )
  // A car nobody remembers here has no last visit to speak of.
  return lastOn === null ? { ...values, lastDate: '' } : values
}

/** An address in a line: its own line ends may not stand in a subject. */
function oneLine(text: string): string {
  return text
    .split(/[\r\n]/)
    .map(line => line.trim())
    .filter(Boolean)
    .join(', ')
}

/** Times as they could be, for a preview: nine o'clock on the due day, or once the hold would be over, and two days on. */
export function exampleTimes(
  dueOn: string,
  heldUntilAt: number,
  zone: string,
): Pick<MessageSlot, 'dropOffAt' | 'heldUntilAt'>[] {
  const from = Math.max(startOfDay(dueOn, zone), addDays(heldUntilAt, 1, zone))
  const first = atWall(dateOf(from, zone), 9 * 60, zone)
  return [first, addDays(first, 2, zone)].map(dropOffAt => ({ dropOffAt, heldUntilAt }))
}
