import { describe, expect, it } from 'vitest'
import { brokenRules, type ElectronicInvoice } from '../../../main/domain/invoicing/index.ts'
import { anInvoice } from './anInvoice.ts'

const rulesOf = (change: Partial<ElectronicInvoice>) =>
  brokenRules({ ...anInvoice, ...change }).map(({ rule }) => rule)
const [first, second] = anInvoice.lines as [ElectronicInvoice['lines'][0], ElectronicInvoice['lines'][0]]
const exempt = (category: 'E' | 'O' | 'Z' | 'AE'): Partial<ElectronicInvoice> => ({
  lines: [{ ...first, category, ratePercent: '0' }],
  allowances: [],
  taxes: [{ category, ratePercent: '0', baseMinor: 100_000, taxMinor: 0 }],
  sumOfLinesMinor: 100_000,
  allowancesMinor: 0,
  withoutTaxMinor: 100_000,
  taxMinor: 0,
  withTaxMinor: 100_000,
  paidMinor: 0,
  dueMinor: 100_000,
})

const reversed: Partial<ElectronicInvoice> = {
  ...exempt('AE'),
  buyer: { ...anInvoice.buyer, country: 'NL', taxNumber: 'NL000000000B01' },
  exemption: 'Reverse charge',
}

// EN 16931-1:2017, by the rules' public identifiers; their wording from memory.
describe('the rules of EN 16931', () => {
  it('all hold for an invoice worked by hand', () => {
    expect(rulesOf({})).toEqual([])
    expect(rulesOf({ ...exempt('E'), exemption: 'Export' })).toEqual([])
    expect(rulesOf({ ...exempt('O'), exemption: 'Outside the scope' })).toEqual([])
    expect(rulesOf(exempt('Z'))).toEqual([])
    expect(rulesOf(reversed)).toEqual([])
  })

  it.each<[string, Partial<ElectronicInvoice>]>([
    ['BR-02', { number: ' ' }],
    ['BR-03', { issuedOn: '15.4.2026' }],
    ['BR-05', { currency: '' }],
    ['BR-06', { seller: { ...anInvoice.seller, name: '' } }],
    ['BR-07', { buyer: { ...anInvoice.buyer, name: '' } }],
    ['BR-08', { seller: { ...anInvoice.seller, address: [] } }],
    ['BR-09', { seller: { ...anInvoice.seller, country: '' } }],
    ['BR-10', { buyer: { ...anInvoice.buyer, address: [''] } }],
    ['BR-11', { buyer: { ...anInvoice.buyer, country: 'Germany' } }],
    ['BR-16', { lines: [] }],
    ['BR-21', { lines: [first, { ...second, id: '1' }] }],
    ['BR-25', { lines: [{ ...first, name: '' }, second] }],
    ['BR-33', { allowances: [{ ...anInvoice.allowances[0]!, reason: '' }] }],
    ['BR-CO-10', { sumOfLinesMinor: 101_001 }],
    ['BR-CO-11', { allowancesMinor: 4999 }],
    ['BR-CO-13', { withoutTaxMinor: 96_001 }],
    ['BR-CO-14', { taxMinor: 18_241 }],
    ['BR-CO-15', { withTaxMinor: 114_241 }],
    ['BR-CO-16', { dueMinor: 94_241 }],
    ['BR-CO-17', { taxes: [{ ...anInvoice.taxes[0]!, taxMinor: 18_242 }] }],
    ['BR-CO-18', { taxes: [] }],
    ['BR-CO-25', { dueOn: '', payTo: '' }],
    ['BR-CO-26', { seller: { ...anInvoice.seller, taxNumber: '' } }],
    ['BR-S-01', { lines: [first, { ...second, ratePercent: '7' }] }],
    ['BR-S-05', { taxes: [{ ...anInvoice.taxes[0]!, ratePercent: '0' }] }],
    ['BR-AE-02', { ...reversed, buyer: { ...anInvoice.buyer, taxNumber: '' } }],
    ['BR-AE-02', { ...reversed, seller: { ...anInvoice.seller, taxNumber: '20 4411' } }],
    ['BR-AE-05', { ...reversed, taxes: [{ ...reversed.taxes![0]!, ratePercent: '19' }] }],
    ['BR-AE-08', { ...reversed, taxes: [{ ...reversed.taxes![0]!, baseMinor: 99_999 }] }],
    ['BR-AE-09', { ...reversed, taxes: [{ ...reversed.taxes![0]!, taxMinor: 1 }] }],
    ['BR-AE-10', { ...reversed, exemption: '' }],
    ['BR-Z-05', { ...exempt('Z'), taxes: [{ ...exempt('Z').taxes![0]!, ratePercent: '19' }] }],
    ['BR-Z-08', { ...exempt('Z'), taxes: [{ ...exempt('Z').taxes![0]!, baseMinor: 99_999 }] }],
    ['BR-Z-09', { ...exempt('Z'), taxes: [{ ...exempt('Z').taxes![0]!, taxMinor: 1 }] }],
    ['BR-S-08', { taxes: [{ ...anInvoice.taxes[0]!, baseMinor: 96_001 }] }],
    [
      'BR-E-05',
      {
        ...exempt('E'),
        exemption: 'Export',
        taxes: [{ category: 'E', ratePercent: '7', baseMinor: 0, taxMinor: 0 }],
      },
    ],
    [
      'BR-E-09',
      {
        ...exempt('E'),
        exemption: 'Export',
        taxes: [{ category: 'E', ratePercent: '0', baseMinor: 100_000, taxMinor: 1 }],
      },
    ],
    ['BR-E-10', exempt('E')],
    ['BR-O-10', exempt('O')],
  ])('%s is named where it is broken', (rule, change) => {
    expect(rulesOf(change)).toContain(rule)
  })
})
