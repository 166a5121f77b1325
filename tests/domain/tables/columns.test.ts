import { expect, it } from 'vitest'
import { type Column, cells, headings, record, schemaOf } from '../../../main/domain/tables/index.ts'

const column = (name: string, type: Column['type'] = 'text', change: Partial<Column> = {}): Column => ({
  name,
  type,
  nullable: true,
  about: '',
  names: null,
  ...change,
})
const shape = {
  file: 'jobs',
  about: 'One car’s visit.',
  columns: [
    column('id', 'text', { nullable: false }),
    column('customerId', 'text', { names: 'customers' }),
    column('promisedAt', 'whole', { about: 'As agreed.' }),
    column('priceMinor', 'whole'),
    column('actualCenti', 'whole'),
    column('panelC', 'number'),
    column('demo', 'yes or no', { nullable: false }),
    column('skills', 'json'),
  ],
}
const rules = { zone: 'America/New_York', currency: 'USD' }
// 2026-11-01T01:30 in New York comes twice; the offset says which (IANA time zone database, rules US).
const values = {
  id: '=1',
  customerId: 'c',
  promisedAt: Date.UTC(2026, 10, 1, 6, 30) / 60_000,
  priceMinor: -12_305,
  actualCenti: -250,
  panelC: -3.5,
  demo: 1,
  skills: '["wash"]',
}

it('says a table in words a person reads: units in the heading, names beside ids, figures as figures', () => {
  expect(headings(shape, rules)).toEqual([
    'Id',
    'Customer id',
    'Customer',
    'Promised at',
    'Price (USD)',
    'Actual (amount)',
    'Panel (°C)',
    'Demo',
    'Skills',
  ])
  expect(cells(shape, { values, names: { customerId: '+Edda' } }, rules)).toEqual([
    "'=1",
    'c',
    "'+Edda",
    '2026-11-01T01:30-05:00',
    '-123.05',
    '-2.5',
    '-3.5',
    'yes',
    '["wash"]',
  ])
  const empty = Object.fromEntries(Object.keys(values).map(name => [name, null]))
  expect(cells(shape, { values: empty, names: {} }, rules)).toEqual(Array(9).fill(''))
})

it('gives a row to a program as it is kept', () => {
  expect(record(shape, { values, names: {} })).toEqual({ ...values, demo: true, skills: ['wash'] })
  expect(record(shape, { values: {}, names: {} })).toMatchObject({ id: null, demo: null, skills: null })
})

it('says of each field what it is', () => {
  expect(schemaOf([shape])).toMatchObject({
    properties: {
      tables: {
        properties: {
          jobs: {
            description: 'One car’s visit.',
            items: {
              properties: {
                id: { type: 'string' },
                customerId: { type: ['string', 'null'], description: 'The id of a row of customers.' },
                promisedAt: {
                  type: ['integer', 'null'],
                  description: 'As agreed. Minutes since 1970-01-01T00:00Z.',
                },
                skills: {},
              },
            },
          },
        },
      },
    },
  })
})
