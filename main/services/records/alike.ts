/** Who is likely on file already, while somebody is typed. */
import { type Likeness, likelihood, likeness, type Marks } from '../../domain/search/index.ts'
import { nameKey, parsePhone } from '../../domain/vehicle/index.ts'
import type { Desk } from '../desk/desk.ts'
import { shopOf } from '../desk/shopView.ts'
import { foundCustomers } from './customersFind.ts'
import type { AlikeInput } from './inputs.ts'
import { peopleOf } from './peopleKept.ts'

export type AlikeCustomer = Awaited<ReturnType<typeof findAlike>>[number]

/** More than anybody looks through while a caller waits. */
const mostShown = 5

/** How many of each search are looked at closely. */
const mostLooked = 40

/** The likeliest first, with what speaks for it; those put away too, who may only have to be taken back. */
export async function findAlike(desk: Desk, input: AlikeInput) {
  const { country } = await shopOf(desk.store.read)
  const { name = '', phone = '', email = '', plate = '', vin = '', exceptId } = input
  const e164 = parsePhone(phone, country)?.e164
  const typed: Marks = {
    name: name.trim(),
    phones: e164 === undefined ? [] : [e164],
    emails: email.includes('@') ? [email.trim()] : [],
    plates: plate.trim().length >= 2 ? [plate] : [],
    vins: vin.trim().length >= 6 ? [vin] : [],
  }
  const people = await peopleOf(desk.store)
  const texts = [nameKey(typed.name), ...typed.phones, ...typed.emails, ...typed.plates, ...typed.vins]
  const ids = new Set(
    texts.filter(text => text.length >= 2).flatMap(text => people.find(text, true).slice(0, mostLooked)),
  )
  if (exceptId !== undefined) ids.delete(exceptId)
  const known = await marksOf(desk, [...ids])
  const found = [...known]
    .map(([id, marks]) => ({ id, why: likeness(typed, marks) }))
    .filter(({ why }) => why.length > 0)
    .sort((a, b) => likelihood(b.why) - likelihood(a.why))
    .slice(0, mostShown)
  const whyOf = new Map<string, Likeness[]>(found.map(({ id, why }) => [id, why]))
  const customers = await foundCustomers(
    desk.store,
    found.map(({ id }) => id),
  )
  return customers.map(customer => ({ ...customer, why: whyOf.get(customer.id) ?? [] }))
}

async function marksOf(desk: Desk, ids: readonly string[]): Promise<Map<string, Marks>> {
  const rows = await desk.store.read.customer.findMany({
    where: { id: { in: [...ids] } },
    select: {
      id: true,
      name: true,
      phone: true,
      email: true,
      contacts: { select: { phone: true, email: true } },
      vehicles: { where: { archivedAt: null }, select: { plate: true, vin: true } },
    },
  })
  const given = (texts: readonly (string | null)[]) => texts.filter(text => text !== null)
  return new Map(
    rows.map(({ id, name, phone, email, contacts, vehicles }) => [
      id,
      {
        name,
        phones: given([phone, ...contacts.map(each => each.phone)]),
        emails: given([email, ...contacts.map(each => each.email)]),
        plates: vehicles.map(each => each.plate),
        vins: given(vehicles.map(each => each.vin)),
      },
    ]),
  )
}
