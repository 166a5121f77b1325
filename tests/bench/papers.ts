/** Documents by the thousand: how long one takes, and whether the memory climbs. */
import { setFlagsFromString } from 'node:v8'
import { runInNewContext } from 'node:vm'
import { invoicePdf } from '../../main/documents/invoicePdf.ts'
import type { Issuer } from '../../main/documents/kit/frame.ts'
import { orderPdf } from '../../main/documents/orderPdf.ts'
import { ownerLetterPdf } from '../../main/documents/ownerLetter.ts'
import { ciiOf } from '../../main/domain/invoicing/index.ts'
import { anInvoiceSheet } from '../documents/anInvoiceSheet.ts'
import { anInvoice } from '../domain/invoicing/anInvoice.ts'
import { otherPapers } from './otherPapers.ts'
import type { Figure } from './run.ts'

const issuer: Issuer = { name: 'Ashdown Paint Care', lines: ['4 Quarry Lane'], logo: null, colour: '#31456b' }
const base = { at: 29_604_000, paper: 'A4' as const, issuer }
const names = ['Łucja Birk-Ødegård', 'משה כהן', '王小明', '김민준', 'Ines Vale']

/** An invoice of twelve lines, in the archival form and with its XML inside. */
const invoice = (i: number) =>
  invoicePdf({
    ...anInvoiceSheet(12),
    ...base,
    title: `Invoice ${i}`,
    to: [names[i % names.length]!, '12 Larch Row'],
    xml: ciiOf(anInvoice),
  })

const letter = (i: number) =>
  ownerLetterPdf({
    ...base,
    language: 'en',
    to: [names[i % names.length]!, '12 Larch Row'],
    dayWords: '15 April 2026',
    subject: `Protection renewal ${i}`,
    body: 'It is time.\n\nCall us.\n',
  })

const order = (i: number) =>
  orderPdf({
    ...base,
    number: i,
    dayWords: 'Wednesday 15 April 2026',
    supplier: { name: 'Carrow Supply', email: null, phone: null, account: '' },
    lines: Array.from({ length: 20 }, (_, line) => ({
      article: `C-${line}`,
      product: `Ovrel ${line}`,
      pack: '12 × 50 ml',
      packs: '1',
      packPrice: '48.00',
      amount: '48.00',
    })),
    goods: '960.00',
    carriage: '9.00',
    total: '969.00',
    currency: 'USD',
    note: '',
    expectedWords: null,
  })

const kinds = [invoice, letter, order, ...otherPapers]
const documents = 1000

setFlagsFromString('--expose-gc')
const collect = runInNewContext('gc') as () => void

/** Megabytes in use once everything that can be let go is. */
function heapMb(): number {
  collect()
  return process.memoryUsage().heapUsed / 1e6
}

/** One invoice, then a thousand mixed documents: the memory of the last tenth against the first. */
export async function* run(): AsyncGenerator<Figure> {
  for (let i = 0; i < 8; i++) await invoice(i)
  const times: number[] = []
  for (let i = 0; i < 41; i++) {
    const from = performance.now()
    await invoice(i)
    times.push(performance.now() - from)
  }
  const median = times.sort((a, b) => a - b)[20]!
  yield {
    bench: 'papers',
    case: 'one invoice, median of 41',
    value: median,
    unit: 'ms',
    goal: 'under 150 ms',
    met: median < 150,
  }
  const from = performance.now()
  let early = 0
  for (let i = 0; i < documents; i++) {
    await kinds[i % kinds.length]!(i)
    if (i === documents / 10) early = heapMb()
  }
  const tookS = (performance.now() - from) / 1000
  const climbed = heapMb() - early
  yield { bench: 'papers', case: '1,000 mixed documents', value: tookS, unit: 's', goal: null, met: null }
  yield {
    bench: 'papers',
    case: 'memory after 1,000 against after 100',
    value: climbed,
    unit: 'MB',
    goal: 'no climb: under 10 MB',
    met: climbed < 10,
  }
}
