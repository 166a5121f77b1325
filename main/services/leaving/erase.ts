/** One person taken out of every table, while the books, the figures and what lies on the cars stay. */
import { say, word } from '../../domain/language/index.ts'
import { found, refuse } from '../../domain/refusal.ts'
import { erasedWords, redactor } from '../../domain/tables/index.ts'
import type { Customer } from '../../store/rows.ts'
import { assertFresh, type Tx } from '../../store/store.ts'
import { type Hits, type Rewrite, rewriteRows, rowsWith } from '../../store/tables/rewriteRows.ts'
import { listErased } from '../backup/erasedBack.ts'
import { askFirst, listed } from '../desk/ask.ts'
import { act, type Desk } from '../desk/desk.ts'
import type { RowAccepted } from '../desk/inputs.ts'
import { comingVisits } from '../floor/comingVisits.ts'
import { sweepPhotos } from '../intake/photos.ts'
import { stopMessages } from '../upkeep/stopMessages.ts'
import { coarsely, knownBy, theirsAlone } from './known.ts'

/** Columns about a person that are emptied whole, whatever stands in them. */
const emptied: Readonly<Record<string, readonly string[]>> = {
  Customer: ['note'],
  OwnerReach: ['postal'],
  Consent: ['source', 'wording'],
  Message: ['address', 'subject', 'body'],
  JobWords: ['address', 'subject', 'body'],
  WaitingEntry: ['note'],
  Bounce: ['address', 'text'],
  Merge: ['before'],
  Vehicle: ['plate', 'note'],
  Job: ['note', 'taxExempt'],
  Quote: ['note', 'signedName', 'signature'],
  JobCharge: ['words'],
  Invoice: ['buyer', 'note', 'carWords', 'exemption', 'reason', 'allowanceReason'],
  InvoiceLine: ['discountReason'],
  Payment: ['note'],
  IntakeEntry: ['ownerName', 'signature'],
}

/** Fields of their audit lines that go whole: what was typed there is about them. */
const typed = new Set(['note', 'postal', 'address', 'source', 'wording'])
/** Free text, where a first name alone may stand. */
const free = new Set([...typed, 'reason', 'why', 'words', 'overrides', 'withdrawnBecause', 'failure'])

/**
 * Erases a customer. Refused while a car of theirs is booked or in the shop; asked about first, with what it touches.
 * Texts about others are looked through before the act, because ten years of them would hold everybody up.
 * @throws Refusal `customer-booked`, `erases`, `stale` or `missing`.
 */
export async function erasePerson(desk: Desk, input: RowAccepted): Promise<void> {
  await eraseOne(desk, input)
  // An entry that was made one with theirs is of the same person.
  for (let own = [input.id]; own.length > 0; ) {
    const merges = await desk.store.read.merge.findMany({
      where: { keptId: { in: own }, undoneAt: null },
      select: { goneId: true },
    })
    own = merges.map(({ goneId }) => goneId)
    for (const id of own) {
      const gone = await desk.store.read.customer.findUniqueOrThrow({ where: { id } })
      if ((await desk.store.read.erasure.count({ where: { customerId: id } })) === 0)
        await eraseOne(desk, { id, version: gone.version, accepted: true })
    }
  }
  // Where the disk will not have it, the next start lists it.
  await listErased(desk).catch(() => {})
}

async function eraseOne(desk: Desk, input: RowAccepted): Promise<void> {
  const { id, version, accepted } = input
  const { read, source } = desk.store
  const customer = found(
    await read.customer.findUnique({ where: { id } }),
    { id },
    say('There is no such customer; look them up again.'),
  )
  const looked = accepted ? coarsely(await theirsAlone(read, id, await knownBy(read, customer))) : []
  const hits = await rowsWith(source.file, looked)
  await act(
    desk,
    async (tx, audit, at) => {
      // First, because a place that a reminder proposes is let go with it, and is no booking.
      await stopMessages(tx, at, { customerId: id }, say('The person was erased'))
      await assertCan(tx, id, at)
      askFirst('erases', await touches(tx, id), {
        field: 'id',
        lead: say('Erase {name}? This cannot be undone:', { name: customer.name }),
        accepted,
      })
      const row = await tx.customer.findUniqueOrThrow({ where: { id } })
      await tx.erasure.create({ data: { customerId: id, at, who: desk.who } })
      const changed = await rewritePerson(tx, source.file, row, hits)
      const { count } = await tx.customer.updateMany({
        where: { id, version },
        data: {
          name: erasedWords(),
          phone: null,
          email: null,
          archivedAt: row.archivedAt ?? at,
          version: { increment: 1 },
        },
      })
      assertFresh(count, 'customer', id)
      // Other people, who are on file only for this one.
      await tx.contact.deleteMany({ where: { customerId: id } })
      const cars = { customerId: id }
      await tx.jobPhoto.deleteMany({ where: { job: cars } })
      await tx.vehicle.updateMany({ where: cars, data: { vin: null, version: { increment: 1 } } })
      await tx.vehicle.updateMany({ where: { ...cars, archivedAt: null }, data: { archivedAt: at } })
      await tx.erasure.update({ where: { customerId: id }, data: { done: true } })
      const rows = [...changed.values()].reduce((sum, count) => sum + count, 0)
      const detail = { rows, lines: changed.get('AuditLine') ?? 0 }
      // Rows as they were before stand nowhere else.
      await tx.act.deleteMany()
      audit({ act: 'erased', entity: 'customer', entityId: id, detail })
    },
    { followed: false },
  )
  await sweepPhotos(desk)
}

async function rewritePerson(tx: Tx, file: string, row: Customer, hits: Hits): Promise<Map<string, number>> {
  const known = await knownBy(tx, row)
  // One word may be a word of the trade too: it is taken for the name only where somebody wrote freely, or named them.
  const whole = redactor({ ...known, names: known.names.filter(name => /\S\s+\S/.test(name)) })
  const freely = redactor(known, true)
  const others = redactor(await theirsAlone(tx, row.id, known))
  const own: Rewrite = (text, { table, column, field }) => {
    if (text === '') return text
    if (emptied[table]?.includes(column)) return table === 'Vehicle' ? '' : erasedWords()
    if (table === 'AuditLine' && typed.has(field)) return erasedWords()
    const named = field === 'customerName' || (field === 'name' && table === 'AuditLine')
    if (named && known.names.includes(text)) return erasedWords()
    return free.has(field) ? freely(text) : whole(text)
  }
  return rewriteRows(tx, file, { customerId: row.id, hits, own, other: text => others(text) })
}

/** Refuses what cannot be erased: somebody with a car booked or here, and who was erased before. */
async function assertCan(tx: Tx, id: string, nowAt: number): Promise<void> {
  if ((await tx.erasure.count({ where: { customerId: id } })) > 0)
    refuse('erased-already', { id }, say('This person was erased already.'))
  const lines = await comingVisits(tx, { customerId: id }, nowAt)
  if (lines.length > 0)
    refuse(
      'customer-booked',
      { id },
      listed(say('They have a car booked or in the shop; cancel that or hand it over first:'), lines),
    )
}

/** What an erasure does, a line each. */
async function touches(tx: Tx, customerId: string): Promise<string[]> {
  const where = { customerId }
  const [cars, jobs, papers, messages, photos] = await Promise.all([
    tx.vehicle.count({ where }),
    tx.job.count({ where: { ...where, status: 'handedOver' } }),
    tx.invoice.count({ where: { job: where } }),
    tx.message.count({ where }),
    tx.jobPhoto.count({ where: { job: where } }),
  ])
  const counted: readonly (readonly [count: number, words: string])[] = [
    [
      cars,
      word(
        '{count, plural, one {1 car loses its plate and VIN and is} other {{count} cars lose their plates and VINs and are}} put away; what was laid on {count, plural, one {it} other {them}} stays.',
      ),
    ],
    [
      jobs,
      word(
        '{count, plural, one {1 visit stays} other {{count} visits stay}} in the books, without the name.',
      ),
    ],
    [
      papers,
      word(
        '{count, plural, one {1 invoice or credit note loses} other {{count} invoices and credit notes lose}} the name and address on {count, plural, one {it} other {them}}; every figure and number stays. Where the law has you keep them whole, save their PDFs first.',
      ),
    ],
    [
      messages,
      word('{count, plural, one {1 message loses} other {{count} messages lose}} address and text.'),
    ],
    [photos, word('{count, plural, one {1 photo of a car is} other {{count} photos of cars are}} deleted.')],
  ]
  return [
    say('Name, phone, e-mail, address and notes go, in every table and in the history too.'),
    ...counted.flatMap(([count, words]) => (count > 0 ? [say(words, { count })] : [])),
    say(
      'Who did what when stays. A name of one word stays where it is in notes about others: look through those.',
    ),
    say(
      'Backups made until now still hold this person until they are thinned out, at most ten years. Restored from one here or in the second place, Lustrum erases again.',
    ),
  ]
}
