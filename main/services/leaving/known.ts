/** What a person is or was known by, and what of it is theirs alone. */
import { type KnownBy, rewritten } from '../../domain/tables/index.ts'
import type { Customer } from '../../store/rows.ts'
import type { Tx } from '../../store/store.ts'

export async function knownBy(tx: Tx, customer: Customer): Promise<KnownBy> {
  const { id } = customer
  const vehicles = await tx.vehicle.findMany({ where: { customerId: id } })
  const carIds = vehicles.map(vehicle => vehicle.id)
  const [called, cars, contacts, consents, messages] = await Promise.all([
    everCalled(tx, 'customer', [id]),
    everCalled(tx, 'vehicle', carIds),
    tx.contact.findMany({ where: { customerId: id } }),
    tx.consent.findMany({ where: { customerId: id }, select: { address: true } }),
    tx.message.findMany({ where: { customerId: id }, select: { address: true } }),
  ])
  const once = (texts: readonly (string | null)[]) =>
    [...new Set(texts)].filter(text => text !== null && text !== '')
  const written = once([...consents, ...messages].map(({ address }) => address)) as string[]
  return {
    names: once([customer.name, ...contacts.map(each => each.name), ...called('name')]) as string[],
    phones: once([
      customer.phone,
      ...contacts.map(each => each.phone),
      ...called('phone'),
      ...written.filter(text => /^\+\d+$/.test(text)),
    ]) as string[],
    addresses: once([
      customer.email,
      ...contacts.map(each => each.email),
      ...called('email'),
      ...written,
    ]) as string[],
    plates: once([
      ...vehicles.flatMap(({ plate, vin }) => [plate, vin]),
      ...cars('plate'),
      ...cars('vin'),
    ]) as string[],
  }
}

/** What stood in a field of theirs at any time: their audit lines say it. */
async function everCalled(tx: Tx, entity: string, ids: readonly string[]) {
  const lines = await tx.auditLine.findMany({ where: { entity, entityId: { in: [...ids] } } })
  const said = new Map<string, string[]>()
  for (const { detail } of lines)
    rewritten(detail, (text, field) => {
      said.set(field, [...(said.get(field) ?? []), text])
      return text
    })
  return (field: string) => said.get(field) ?? []
}

/**
 * What may be looked for in texts about others: a name of one word is a word of the language too, a short plate is a
 * number, and what somebody else on file shares is theirs as well.
 */
export async function theirsAlone(tx: Tx, customerId: string, known: KnownBy): Promise<KnownBy> {
  const { names, phones, addresses, plates } = known
  const [others, cars, crew, suppliers] = await Promise.all([
    tx.customer.findMany({
      where: {
        id: { not: customerId },
        OR: [{ name: { in: [...names] } }, { phone: { in: [...phones] } }, { email: { in: [...addresses] } }],
      },
    }),
    tx.vehicle.findMany({ where: { customerId: { not: customerId }, plate: { in: [...plates] } } }),
    tx.crewMember.findMany({ where: { name: { in: [...names] } } }),
    tx.supplier.findMany({ where: { name: { in: [...names] } } }),
  ])
  const shared = new Set([
    ...[...others, ...crew, ...suppliers].map(({ name }) => name),
    ...others.flatMap(({ phone, email }) => [phone, email]),
    ...cars.flatMap(({ plate, vin }) => [plate, vin]),
  ])
  const alone = (texts: readonly string[]) => texts.filter(text => !shared.has(text))
  return {
    names: alone(names).filter(name => /\S\s+\S/.test(name)),
    phones: alone(phones),
    addresses: alone(addresses).filter(text => text.includes('@')),
    plates: alone(plates).filter(plate => plate.length >= 5),
  }
}

/** A part of each that any text holding it holds too, whatever its capitals and gaps. */
export function coarsely({ names, phones, addresses, plates }: KnownBy): string[] {
  const longest = (text: string, part: RegExp) =>
    (text.match(part) ?? []).reduce((best, each) => (each.length > best.length ? each : best), '')
  return [
    // Only plain letters are compared without regard to capitals.
    ...[...names, ...addresses].map(text => longest(text, /[\w.@-]+/g) || text),
    ...phones.map(phone => phone.slice(-2)),
    ...plates.map(plate => longest(plate, /[A-Za-z]+|\d+/g) || plate),
  ]
}
