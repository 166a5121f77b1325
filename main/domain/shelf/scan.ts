/**
 * What a bar code scanner sends. A plain code is a GTIN or a number of the shop's own; a longer one (GS1-128, GS1
 * DataMatrix) is a chain of elements, each led by an identifier: 01 the GTIN, 17 the expiry, 10 the batch, 15 the
 * best-before date, 21 a serial number. Scanners may put three characters before it that name the symbol (`]C1`), and
 * end elements of open length with the group separator. (GS1 General Specifications; rules from memory.)
 */
import { isGtin, readGtin } from './gtin.ts'

export interface Scan {
  /** What came, trimmed. */
  readonly text: string
  /** 14 digits; null where the code holds none. */
  readonly gtin: string | null
  readonly expiresOn: string | null
  readonly batch: string | null
}

const SEPARATOR = '\u001d'
// Identifiers of fixed length that may stand before those wanted, with the digits that follow them.
const FIXED: Readonly<Record<string, number>> = {
  '00': 18,
  '01': 14,
  '02': 14,
  '11': 6,
  '12': 6,
  '13': 6,
  '15': 6,
  '16': 6,
  '17': 6,
  '20': 2,
}
const OPEN = ['10', '21', '22', '30', '37', '240', '241', '400']

/** Reads a code. `thisYear` decides the century of an expiry. Never refuses: what is not understood is only text. */
export function readScan(raw: string, thisYear: number): Scan {
  const text = raw.trim()
  const code = text.replace(/^\][A-Za-z]\d/, '')
  if (isGtin(code)) return { text, gtin: readGtin(code), expiresOn: null, batch: null }
  const elements = readElements(code)
  const gtin = elements?.get('01')
  if (!elements || gtin === undefined || !isGtin(gtin))
    return { text, gtin: null, expiresOn: null, batch: null }
  const date = elements.get('17') ?? elements.get('15')
  return {
    text,
    gtin,
    expiresOn: date === undefined ? null : readDate(date, thisYear),
    batch: elements.get('10') ?? null,
  }
}

function readElements(code: string): Map<string, string> | null {
  const elements = new Map<string, string>()
  let at = code.startsWith(SEPARATOR) ? 1 : 0
  while (at < code.length) {
    const fixed = FIXED[code.slice(at, at + 2)]
    if (fixed !== undefined) {
      const value = code.slice(at + 2, at + 2 + fixed)
      if (value.length < fixed || !/^\d+$/.test(value)) return null
      elements.set(code.slice(at, at + 2), value)
      at += 2 + fixed
      if (code[at] === SEPARATOR) at++
      continue
    }
    const open = OPEN.find(identifier => code.startsWith(identifier, at))
    if (open === undefined) return null
    const end = code.indexOf(SEPARATOR, at)
    const value = code.slice(at + open.length, end < 0 ? code.length : end)
    if (value === '') return null
    elements.set(open, value)
    at = end < 0 ? code.length : end + 1
  }
  return elements.size > 0 ? elements : null
}

/** YYMMDD; day 00 is the month's last. The century is the one that puts the year within 50 of this one. */
function readDate(digits: string, thisYear: number): string | null {
  const year = Number(digits.slice(0, 2))
  const month = Number(digits.slice(2, 4))
  const day = Number(digits.slice(4, 6))
  if (month < 1 || month > 12 || day > 31) return null
  const gap = year - (thisYear % 100)
  const century = Math.floor(thisYear / 100) + (gap >= 51 ? -1 : gap <= -50 ? 1 : 0)
  const full = century * 100 + year
  const last = new Temporal.PlainYearMonth(full, month).daysInMonth
  if (day > last) return null
  const two = (n: number) => String(n).padStart(2, '0')
  return `${full}-${two(month)}-${two(day === 0 ? last : day)}`
}
