/** Money that comes in for a job, before its invoice and after. What was written down is taken back, never changed. */
import { say } from '../../domain/language/index.ts'
import { inCoins } from '../../domain/money/index.ts'
import { found, refuse } from '../../domain/refusal.ts'
import { checkNote, checkText } from '../../domain/shop/index.ts'
import { act, type Desk } from '../desk/desk.ts'
import type { PaymentInput, UndoInput } from './inputs.ts'
import { accountOf, billOf, moneyJob, standingInvoice } from './jobBill.ts'

/**
 * Takes a payment: a deposit before there is an invoice, else toward what is owed. Cash for all of it is rounded to the
 * shop's coins, and the difference is kept apart.
 * @throws Refusal `stale` where somebody has taken a payment for the job meanwhile.
 */
export async function takePayment(
  desk: Desk,
  input: PaymentInput,
): Promise<{ id: string; roundingMinor: number }> {
  const { id: jobId, method, amountMinor, tipMinor, seenPaidMinor } = input
  const note = checkNote(input.note, 'note', 400)
  return act(desk, async (tx, audit, at) => {
    const job = await moneyJob(tx, jobId)
    const { owedMinor, paidMinor } = accountOf(job)
    if (paidMinor !== seenPaidMinor)
      refuse(
        'stale',
        { seenPaidMinor },
        say('A payment was taken in another window; look at what is owed now.'),
      )
    if (amountMinor === 0 && tipMinor === 0)
      refuse(
        'payment-nothing',
        { amountMinor },
        say('Give what was paid; a deposit or a part of it will do.'),
      )
    if (tipMinor < 0) refuse('tip-bad', { tipMinor }, say('A tip is 0 or more.'))
    const bill = await billOf(tx, job)
    const standing = standingInvoice(job)
    const toPayMinor = standing ? owedMinor : bill.withTaxMinor - paidMinor
    if (amountMinor > Math.max(0, toPayMinor))
      refuse(
        'payment-too-large',
        { amountMinor },
        say('That is more than is to be paid; what is on top is a tip.'),
      )
    if (amountMinor < 0 && -amountMinor > Math.max(0, paidMinor))
      refuse('refund-too-large', { amountMinor }, say('More is paid back than was paid; pay back less.'))
    const whole = method === 'cash' && amountMinor === toPayMinor
    const roundingMinor = whole ? inCoins(amountMinor, bill.rules.cashStepMinor) - amountMinor : 0
    const { id } = await tx.payment.create({
      data: {
        jobId,
        at,
        who: desk.who,
        method,
        amountMinor,
        tipMinor,
        roundingMinor,
        before: job.invoices.length === 0,
        note,
      },
    })
    audit({
      act: amountMinor < 0 ? 'paid back' : 'paid',
      entity: 'job',
      entityId: jobId,
      detail: { method, amountMinor, ...(tipMinor > 0 && { tipMinor }) },
    })
    return { id, roundingMinor }
  })
}

/** Takes a payment back that was typed wrong, by another of the same size the other way round. */
export async function undoPayment(desk: Desk, { id, reason }: UndoInput): Promise<void> {
  const why = checkText(reason, 'reason', say('Why it is taken back'), 200)
  return act(desk, async (tx, audit, at) => {
    const paid = found(
      await tx.payment.findUnique({ where: { id } }),
      { id },
      say('This payment is not there.'),
    )
    if (paid.undoesId !== null || (await tx.payment.count({ where: { undoesId: id } })) > 0)
      refuse('undone', { id }, say('This payment is taken back already.'))
    const { jobId, method, amountMinor, tipMinor, roundingMinor } = paid
    const billed = await tx.invoice.count({ where: { jobId } })
    await tx.payment.create({
      data: {
        jobId,
        at,
        who: desk.who,
        method,
        amountMinor: -amountMinor,
        tipMinor: -tipMinor,
        roundingMinor: -roundingMinor,
        before: billed === 0,
        note: why,
        undoesId: id,
      },
    })
    audit({
      act: 'payment taken back',
      entity: 'job',
      entityId: jobId,
      detail: { method, amountMinor, reason: why },
    })
  })
}
