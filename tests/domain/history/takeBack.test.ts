import { expect, test } from 'vitest'
import { barOf, type ChangedRow, wayBack } from '../../../main/domain/history/takeBack.ts'

const row = (table: string, how: ChangedRow['how'], after: ChangedRow['after'] = {}): ChangedRow => ({
  table,
  how,
  after,
})

test('settings of mail are entered again, whether they were new or changed, for their password is kept elsewhere', () => {
  const words = 'Settings of mail go with a password kept elsewhere: enter them again.'
  expect(barOf([row('MailSettings', 'added')])).toBe(words)
  expect(barOf([row('MailSettings', 'changed')])).toBe(words)
  expect(barOf([row('MailSettings', 'removed')])).toBeNull()
})

test('one row that cannot go back keeps the whole act, and says what to do instead', () => {
  expect(barOf([row('Job', 'changed'), row('Invoice', 'added')])).toBe(
    'An invoice was issued: write a credit note instead.',
  )
  expect(barOf([row('Job', 'changed'), row('Customer', 'added')])).toBeNull()
  expect(barOf([])).toBeNull()
})

test('an e-mail that has left or is leaving stands; one still waiting, and a letter, can be taken back', () => {
  const message = (state: string, channel: string, table = 'Message') =>
    barOf([row(table, 'changed', { state, channel })])
  const gone = 'An e-mail has gone out and may have been read: write again instead.'
  expect(message('sent', 'email')).toBe(gone)
  expect(message('sending', 'email', 'JobWords')).toBe(gone)
  expect(message('queued', 'email')).toBeNull()
  expect(message('sent', 'letter')).toBeNull()
  expect(message('sent', 'email', 'Customer')).toBeNull()
})

test('the ledger gets an entry against it, a condition that was looked at stands, the rest is put back', () => {
  expect(wayBack({ table: 'StockMove', how: 'added' })).toBe('counter')
  expect(wayBack({ table: 'StockMove', how: 'changed' })).toBe('back')
  expect(wayBack({ table: 'ConditionCheck', how: 'added' })).toBe('stays')
  expect(wayBack({ table: 'Job', how: 'removed' })).toBe('back')
})
