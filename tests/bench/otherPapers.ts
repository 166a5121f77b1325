/** One of each of the other papers, as large as a usual one, for `papers`. Invented names throughout. */
import { readFileSync } from 'node:fs'
import { bottleLabelPdf } from '../../main/documents/bottleLabel.ts'
import { careSheetPdf } from '../../main/documents/careSheet.ts'
import { certificatePdf } from '../../main/documents/certificate.ts'
import { daySheetPdf } from '../../main/documents/daySheet.ts'
import { intakeReportPdf } from '../../main/documents/intakeReport.ts'
import type { Issuer } from '../../main/documents/kit/frame.ts'
import { quotePdf } from '../../main/documents/quotePdf.ts'
import { statementPdf } from '../../main/documents/statementPdf.ts'
import { workOrderPdf } from '../../main/documents/workOrder.ts'

const logo = { bytes: new Uint8Array(readFileSync('assets/icon.png')), width: 1024, height: 1024 }
const issuer: Issuer = { name: 'Ashdown Paint Care', lines: ['4 Quarry Lane'], logo, colour: '#31456b' }
const base = { at: 29_604_000, paper: 'LETTER' as const, issuer }
const many = <T>(count: number, make: (i: number) => T) => Array.from({ length: count }, (_, i) => make(i))
const car: [string, string] = ['Car', 'graphite Marlo Wendrel (KFS 204)']

const quote = (number: number) =>
  quotePdf({
    ...base,
    number,
    to: ['משה כהן'],
    facts: [car],
    currency: 'USD',
    variants: many(3, i => ({
      name: `Way ${i + 1}`,
      lines: many(4, line => ({ words: `Treatment ${line}`, amount: '420.00' })),
      total: '1,680.00',
      facts: [['Days away', '4']],
    })),
    note: 'Tax comes on top of these prices.',
    signed: { words: 'Ines Vale', png: null },
  })

const statement = () =>
  statementPdf({
    ...base,
    dayWords: 'Wed 15 April 2026',
    to: ['王小明'],
    currency: 'USD',
    lines: many(40, i => ({
      day: 'Wed 15 April 2026',
      words: `Invoice INV-${i}`,
      about: 'KFS 204',
      amount: '108.25',
      open: '108.25',
    })),
    open: '108.25',
  })

const workOrder = (number: number) =>
  workOrderPdf({
    ...base,
    number,
    facts: [car],
    treatments: [{ name: 'Two layers', under: 'Whole car' }],
    panels: [{ name: 'Roof', finish: 'film', thinnest: '', mind: '' }],
    forbids: [],
    steps: many(9, i => ({
      name: `Step ${i}`,
      under: 'Ovrel Two',
      bay: 'Bay 3',
      from: 'Mon 13 April 2026, 13:45',
      to: 'Mon 13 April 2026, 14:43',
      who: 'Mika',
      done: i < 3,
    })),
    checks: many(5, i => ({ when: 'Before it leaves', words: `Check ${i}`, doneBy: null })),
    cure: ['Ovrel Two. Dry until: 24 h, common practice.'],
    products: many(4, i => ({
      name: `Ovrel ${i}`,
      signalWord: 'Danger',
      pictograms: ['GHS02', 'GHS07'] as const,
      hazards: ['Flammable liquid and vapor.'],
      protection: ['nitrile gloves'],
      caution: '',
      silences: [],
      handling: [],
    })),
    tools: ['Goggles, a dust mask for dry work.'],
    notes: [],
  })

const care = () =>
  careSheetPdf({
    ...base,
    subject: 'Care of your graphite Marlo Wendrel',
    to: ['김민준'],
    facts: [car],
    times: [['No wash before', 'Tue 21 April 2026, 11:43']],
    reckoned: 'Reckoned from Wed 15 April 2026.',
    applied: [{ product: 'Ovrel Two', step: 'First layer' }],
    visits: [{ title: 'topper renewal', due: 'Thu 8 October 2026', window: '' }],
  })

const day = () =>
  daySheetPdf({
    ...base,
    dayWords: 'Wednesday 15 April 2026',
    facts: [['Open', '08:00 to 18:00']],
    parts: many(4, i => ({
      title: `Part ${i}`,
      columns: [{ title: 'At', width: 'fit' as const }, { title: 'Car' }],
      rows: many(8, () => ['08:00', 'KFS 204']),
      none: '',
    })),
    cautions: ['Ovrel One: wear nitrile gloves.'],
  })

const certificate = (i: number) =>
  certificatePdf({
    ...base,
    reference: `${i}-1`,
    sections: many(3, part => ({ title: `${part}. Layer`, facts: [['Product', 'Ovrel Two'] as const] })),
    correctedBy: null,
    code: `LUSTRUM1.${i}-1.${'a'.repeat(43)}.${'b'.repeat(86)}.abcdefgh`,
  })

const intake = () =>
  intakeReportPdf({
    ...base,
    title: 'Intake of KFS 204',
    reference: 'intake of job 1, page 1',
    to: ['Ines Vale'],
    facts: [car],
    car: [car],
    standing: [],
    shape: 'saloon',
    marks: [{ x: 200, y: 200, severity: 'light', words: 'Chip, light, Bonnet' }],
    thickness: [],
    judged: '',
    photos: many(2, i => ({ name: `Photo ${i}`, jpeg: logo.bytes, width: 1024, height: 1024 })),
    signed: 'Ines Vale',
    signature: null,
  })

const label = (i: number) =>
  bottleLabelPdf({
    productName: 'Ovrel Panel Wipe',
    shopName: issuer.name,
    at: base.at,
    originWords: `decanted 15 April 2026 from no. ${i}`,
    maker: '',
    signalWord: 'Danger',
    pictograms: ['GHS02', 'GHS07'],
    hazards: ['Highly flammable liquid and vapour'],
    precautions: ['Keep away from heat'],
    protection: ['nitrile gloves'],
    silences: [],
    recordUrl: `http://127.0.0.1:4410/shelf/lot/${i}`,
    onlyHere: true,
  })

/** Each makes one paper, of the number given. */
export const otherPapers: readonly ((i: number) => Promise<Uint8Array>)[] = [
  quote,
  statement,
  workOrder,
  care,
  day,
  certificate,
  intake,
  label,
]
