import { getBill, saveBill } from '../services/money/bill.ts'
import { whatEarns } from '../services/money/earns.ts'
import { getInvoice } from '../services/money/electronic.ts'
import {
  acceptInput,
  billInput,
  bookQuoteInput,
  creditInput,
  dayInput,
  declineInput,
  issueInput,
  oneOf,
  papersInput,
  paymentInput,
  quoteInput,
  undoInput,
} from '../services/money/inputs.ts'
import { creditInvoice, issueInvoice } from '../services/money/issue.ts'
import { owedList, statement } from '../services/money/owed.ts'
import { findPapers } from '../services/money/papers.ts'
import { takePayment, undoPayment } from '../services/money/payments.ts'
import {
  acceptQuote,
  bookQuote,
  declineQuote,
  getQuote,
  listQuotes,
  makeQuote,
} from '../services/money/quotes.ts'
import { takings } from '../services/money/takings.ts'
import { moneyRulesInput } from '../services/prices/inputs.ts'
import { getMoneyRules, saveMoneyRules } from '../services/prices/moneyRules.ts'
import { procedure, router } from './trpc.ts'

export const money = router({
  rules: procedure.query(({ ctx }) => getMoneyRules(ctx)),
  saveRules: procedure.input(moneyRulesInput).mutation(({ ctx, input }) => saveMoneyRules(ctx, input)),
  bill: procedure.input(oneOf).query(({ ctx, input }) => getBill(ctx, input)),
  saveBill: procedure.input(billInput).mutation(({ ctx, input }) => saveBill(ctx, input)),
  issue: procedure.input(issueInput).mutation(({ ctx, input }) => issueInvoice(ctx, input)),
  invoice: procedure.input(oneOf).query(({ ctx, input }) => getInvoice(ctx, input)),
  credit: procedure.input(creditInput).mutation(({ ctx, input }) => creditInvoice(ctx, input)),
  pay: procedure.input(paymentInput).mutation(({ ctx, input }) => takePayment(ctx, input)),
  undoPayment: procedure.input(undoInput).mutation(({ ctx, input }) => undoPayment(ctx, input)),
  owed: procedure.query(({ ctx }) => owedList(ctx)),
  statement: procedure.input(oneOf).query(({ ctx, input }) => statement(ctx, input)),
  papers: procedure.input(papersInput).query(({ ctx, input }) => findPapers(ctx, input)),
  quotes: procedure.query(({ ctx }) => listQuotes(ctx)),
  quote: procedure.input(oneOf).query(({ ctx, input }) => getQuote(ctx, input)),
  makeQuote: procedure.input(quoteInput).mutation(({ ctx, input }) => makeQuote(ctx, input)),
  acceptQuote: procedure.input(acceptInput).mutation(({ ctx, input }) => acceptQuote(ctx, input)),
  declineQuote: procedure.input(declineInput).mutation(({ ctx, input }) => declineQuote(ctx, input)),
  bookQuote: procedure.input(bookQuoteInput).mutation(({ ctx, input }) => bookQuote(ctx, input)),
  earns: procedure.query(({ ctx }) => whatEarns(ctx)),
  takings: procedure.input(dayInput).query(({ ctx, input }) => takings(ctx, input)),
})
