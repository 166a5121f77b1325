/** Whom to talk to about a customer's cars: a fleet has a manager, a driver and somebody who pays. */
import { say } from '../../domain/language/index.ts'
import { found, refuse } from '../../domain/refusal.ts'
import { checkNote, checkText } from '../../domain/shop/index.ts'
import { readMailAddress, readPhone } from '../../domain/vehicle/index.ts'
import type { Tx } from '../../store/store.ts'
import { act, type Desk } from '../desk/desk.ts'
import { type RowSeen, removeRow, saveRow } from '../desk/keep.ts'
import { shopOf } from '../desk/shopView.ts'
import type { ContactInput } from './inputs.ts'

/** More than anybody rings through. */
const mostContacts = 30

const kept = (tx: Tx, customerId: string) => ({
  table: tx.contact,
  entity: 'customer',
  noun: 'contact',
  partOf: customerId,
})

/** Adds a contact, or changes one. Who is to be called first takes the place of whoever was. */
export function saveContact(desk: Desk, input: ContactInput): Promise<RowSeen> {
  return act(desk, async (tx, audit) => {
    const { customerId } = input
    const { country } = await shopOf(tx)
    const callFirst = input.callFirst ?? false
    const data = {
      name: checkText(input.name, 'name', say('The name')),
      role: checkNote(input.role ?? '', 'role', 80),
      phone: input.phone?.trim() ? readPhone(input.phone, country).e164 : null,
      email: input.email?.trim() ? readMailAddress(input.email) : null,
      callFirst,
    }
    if (input.id === undefined) await assertRoom(tx, customerId)
    else await theirs(tx, customerId, input.id)
    if (callFirst)
      await tx.contact.updateMany({
        where: { customerId, callFirst: true, id: { not: input.id ?? '' } },
        data: { callFirst: false, version: { increment: 1 } },
      })
    const { id, version } = await saveRow(audit, kept(tx, customerId), input, {
      data,
      added: { customerId },
    })
    return { id, version }
  })
}

/** Takes a contact out; the history keeps who it was. */
export function removeContact(desk: Desk, input: RowSeen): Promise<void> {
  return act(desk, async (tx, audit) => {
    const { customerId } = found(
      await tx.contact.findUnique({ where: { id: input.id } }),
      { id: input.id },
      say('This contact was taken out already; look at the customer again.'),
    )
    await removeRow(audit, kept(tx, customerId), input)
  })
}

async function theirs(tx: Tx, customerId: string, id: string): Promise<void> {
  found(
    await tx.contact.findFirst({ where: { id, customerId } }),
    { id },
    say('This contact is not one of the customer; look at them again.'),
  )
}

async function assertRoom(tx: Tx, customerId: string): Promise<void> {
  found(
    await tx.customer.findUnique({ where: { id: customerId } }),
    { customerId },
    say('There is no such customer; look them up again.'),
  )
  if ((await tx.contact.count({ where: { customerId } })) >= mostContacts)
    refuse(
      'contacts-many',
      { name: customerId },
      say('There are {mostContacts} contacts already; take one out who is not needed any more.', {
        mostContacts,
      }),
    )
}
