/**
 * The ledger: every change of stock is a move, and no move is ever edited. On hand is the sum of a lot's moves. Amounts
 * are whole hundredths, so that the sum is the same in whatever order the moves are read. A wrong move is put right by
 * another that names it.
 */
import { say, word } from '../language/index.ts'
import { refuse } from '../refusal.ts'
import { unitsOf } from './amount.ts'
import type { DiscardReason } from './discard.ts'

export const MOVE_KINDS = ['receipt', 'use', 'waste', 'mix', 'count', 'return', 'correction'] as const
/**
 * `receipt` goods in; `use` drawn for a step; `waste` thrown away; `mix` what a
 * batch took of a concentrate; `count` the difference a count found; `return` sent
 * back to the supplier; `correction` puts an earlier move right.
 */
export type MoveKind = (typeof MOVE_KINDS)[number]

const kindWords: Readonly<Record<MoveKind, string>> = {
  receipt: word('receipt||move'),
  use: word('use||move'),
  waste: word('waste||move'),
  mix: word('mix||move'),
  count: word('count||move'),
  return: word('return||move'),
  correction: word('correction||move'),
}

/** The kind of a move as people read it. */
function moveWords(kind: MoveKind): string {
  return say(kindWords[kind])
}

export interface MoveDraft {
  readonly lotId: string
  readonly productId: string
  readonly kind: MoveKind
  /** Signed: what it adds to the lot. Receipts add; use, waste and return take away; count and correction do either. */
  readonly centi: number
  /** Epoch minute. */
  readonly at: number
  /** Who did it. */
  readonly by: string
  /** Why; null only where the kind says it all. */
  readonly why: string | null
  /** The step and job a use served. */
  readonly stepId: string | null
  readonly jobId: string | null
  /** What a receipt cost, carriage shared in, in minor units; null for every other kind. */
  readonly costMinor: number | null
  /** The move a correction puts right. */
  readonly correctsId: string | null
  /** What was the matter with what was thrown away; unknown of what was before anybody was asked. */
  readonly discard?: DiscardReason | null | undefined
}

export interface Move extends MoveDraft {
  readonly id: string
  /** The place in the ledger: every later move has a larger one. */
  readonly seq: number
}

/** What is left of each lot. */
export type Balances = ReadonlyMap<string, number>

/** Refuses a move that does not hold together. The sum of the lot is checked by `balanceAfter`. */
export function checkMove(move: MoveDraft): void {
  const { kind, centi } = move
  if (!Number.isSafeInteger(centi) || centi === 0)
    refuse(
      'amount-bad',
      { centi },
      say('A move of {centi} is none; give an amount in steps of 0.01.', { centi: unitsOf(centi) }),
    )
  if (kind === 'receipt' && centi < 0)
    refuse('sign-bad', { centi }, say('A receipt adds to the shelf; record goods sent back as a return.'))
  if (['use', 'waste', 'mix', 'return'].includes(kind) && centi > 0)
    refuse(
      'sign-bad',
      { centi },
      say('A {kind} takes from the shelf; to put one right, record a correction.', { kind: moveWords(kind) }),
    )
  if (!move.by.trim()) refuse('who-missing', { by: move.by }, say('Say who made this move.'))
  if (kind !== 'receipt' && kind !== 'use' && !move.why?.trim())
    refuse(
      'why-missing',
      { why: move.why },
      say('Say why: a {kind} needs a reason.', { kind: moveWords(kind) }),
    )
  if (kind === 'use' && move.stepId === null && !move.why?.trim())
    refuse(
      'why-missing',
      { why: move.why },
      say('Say what this was used for: choose the step it served, or give a reason.'),
    )
  if ((kind === 'receipt') !== (move.costMinor !== null))
    refuse(
      'cost-misplaced',
      { costMinor: move.costMinor },
      say('A receipt carries its cost, 0 for a sample; other moves none.'),
    )
  if (move.costMinor !== null && !(Number.isSafeInteger(move.costMinor) && move.costMinor >= 0))
    refuse(
      'cost-bad',
      { costMinor: move.costMinor },
      say('{costMinor} is not an amount of money in minor units.', { costMinor: move.costMinor }),
    )
  if (move.discard && kind !== 'waste')
    refuse(
      'discard-misplaced',
      { discard: move.discard },
      say('Only what is thrown away has gone off or been spilt.'),
    )
  if (move.correctsId !== null && kind !== 'correction')
    refuse(
      'corrects-misplaced',
      { correctsId: move.correctsId },
      say('Only a correction names the move it puts right.'),
    )
}

/** A lot's balance after a move; refuses one that would leave less than nothing. */
export function balanceAfter(balanceCenti: number, move: Pick<MoveDraft, 'centi'>): number {
  const after = balanceCenti + move.centi
  if (after < 0)
    refuse(
      'beyond-stock',
      { centi: move.centi },
      say(
        'This takes {centi} from a bottle that holds {balanceCenti} by the ledger; draw the rest from another, or record that more was found than counted.',
        { centi: unitsOf(-move.centi), balanceCenti: unitsOf(balanceCenti) },
      ),
    )
  return after
}

/** The balances with further moves appended in ledger order; the given ones are left as they are. */
export function appended(balances: Balances, moves: readonly MoveDraft[]): Map<string, number> {
  const next = new Map(balances)
  for (const move of moves) {
    checkMove(move)
    next.set(move.lotId, balanceAfter(next.get(move.lotId) ?? 0, move))
  }
  return next
}

/** Moves in ledger order, whatever order they were read in. */
export function inLedgerOrder<M extends Pick<Move, 'seq'>>(moves: readonly M[]): M[] {
  return [...moves].sort((a, b) => a.seq - b.seq)
}
