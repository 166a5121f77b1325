import type { OutboxMessage, SendQuestion } from '../../domain/upkeep/index.ts'
import type { Letter } from '../../outbox/mail.ts'
import type { Tx } from '../../store/store.ts'
import type { Desk } from '../desk/desk.ts'
import type { Sender } from '../desk/mailSettings.ts'

/** One table of mails as the outbox sends them: how its rows are found, judged, kept and made letters. */
export interface Queue<Row extends { readonly id: string; readonly state: string }> {
  /** Rows found on their way. */
  sending(tx: Tx): Promise<Row[]>
  /** E-mails that may go out by now, the oldest first. */
  approved(tx: Tx, nowAt: number): Promise<{ id: string }[]>
  row(tx: Tx, id: string): Promise<Row>
  outboxOf(row: Row): OutboxMessage
  save(tx: Tx, row: Row, next: OutboxMessage, more?: { waiting?: string | null }): Promise<void>
  /** Why a row is void whatever the gate says, in words; null: it is not. */
  voidWords(tx: Tx, row: Row, nowAt: number): Promise<string | null>
  question(tx: Tx, row: Row, nowAt: number): Promise<SendQuestion>
  letter(desk: Desk, row: Row, sender: Sender): Promise<Letter>
  /** What else is let go once a row was withdrawn. */
  withdrawn(tx: Tx, row: Row, nowAt: number): Promise<void>
  /** Whose history its acts stand in. */
  audited(row: Row): { entity: string; entityId: string }
}
