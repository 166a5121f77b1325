/** Which acts can be taken back by putting their rows back as they were, and why others cannot. */
import { word } from '../language/index.ts'

/** One row an act changed: what happened to it, and some of its columns afterwards. */
export interface ChangedRow {
  readonly table: string
  readonly how: 'added' | 'changed' | 'removed'
  readonly after: Readonly<Record<string, string | number | null>>
}

/**
 * What becomes of a row when its act is taken back: `back`: it is put back as it was; `stays`: it is a record of
 * something that was looked at, and stands; `counter`: the ledger is only ever added to, so an entry is set against it.
 */
type Way = 'back' | 'stays' | 'counter'

type How = ChangedRow['how']
type Bars = Readonly<Partial<Record<How, string>>>

const signed = word('A page was signed: correct it with a further page.')
const issued = word('An invoice was issued: write a credit note instead.')
const mailSettings = word('Settings of mail go with a password kept elsewhere: enter them again.')

/** Rows whose change nobody can take back, and what to do instead. */
const bars: Readonly<Record<string, Bars>> = {
  Invoice: { added: issued },
  InvoiceLine: { added: issued },
  Payment: { added: word('A payment was written down: take it back on its invoice.') },
  AppliedEntry: { added: signed },
  IntakeEntry: { added: signed },
  PaintDecision: {
    added: word('A decision about the paint stays with its reason: note what is different now.'),
  },
  Consent: {
    added: word('What an owner agreed to is not taken back but withdrawn: enter that they said so.'),
  },
  Erasure: { added: word('What was erased is nowhere any more.') },
  JobPhoto: { removed: word('The file of the photo is gone: add the photo again.') },
  OrderMessage: { added: word('The order has gone out: call it off with the supplier.') },
  MailSettings: { added: mailSettings, changed: mailSettings },
}

const mailed = word('An e-mail has gone out and may have been read: write again instead.')

/** Tables of messages: what has left, or is on its way, is not taken back. */
const messages: ReadonlySet<string> = new Set(['Message', 'JobWords'])
const left: ReadonlySet<string | number | null> = new Set(['sending', 'sent'])

/** Why an act with these changes cannot be taken back, as a text to be said; null: it can. */
export function barOf(rows: readonly ChangedRow[]): string | null {
  for (const { table, how, after } of rows) {
    const words = bars[table]?.[how]
    if (words) return words
    if (messages.has(table) && left.has(after.state ?? null) && after.channel === 'email') return mailed
  }
  return null
}

/** What becomes of this row when its act is taken back. */
export function wayBack({ table, how }: Pick<ChangedRow, 'table' | 'how'>): Way {
  if (table === 'StockMove' && how === 'added') return 'counter'
  return table === 'ConditionCheck' ? 'stays' : 'back'
}
