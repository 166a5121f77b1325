import { expect, it } from 'vitest'
import { cautionFrom, fieldsOf, sheetKept } from '../../../main/services/shelf/safetyView.ts'

type Record = Parameters<typeof cautionFrom>[1]

const record = (change: Partial<Record>) =>
  ({
    ...fieldsOf(null),
    productId: 'one',
    sheetFileId: null,
    version: 1,
    ...change,
  }) as Record

it('treats what nobody has read of as harmful', () => {
  expect(cautionFrom('Ovrel Two', record({}), 'eu-clp')).toContain('Treat it as harmful until')
})

it('hands over the sheet’s own signal word before that of the codes, and what to wear', () => {
  // CLP Annex I: H226 calls for Warning, H225 for Danger.
  const read = record({ hazardCodes: ['H226'], protection: ['nitrile gloves'] })
  expect(cautionFrom('Ovrel Two', read, 'eu-clp')).toContain('Ovrel Two: WARNING, wear nitrile gloves.')
  expect(cautionFrom('Ovrel Two', { ...read, signalWord: 'Danger' }, 'eu-clp')).toContain('DANGER, ')
  expect(cautionFrom('Ovrel Two', { ...read, signalWord: 'none' }, 'eu-clp')).toContain('Ovrel Two: wear')
})

it('tells a silent sheet from one that asks for no equipment; the sheet decides either way', () => {
  const silent = cautionFrom('Ovrel Two', record({ hazardCodes: [] }), 'eu-clp')
  const none = cautionFrom('Ovrel Two', record({ hazardCodes: [], protection: [] }), 'eu-clp')
  expect(silent).toContain('silent on protective equipment')
  expect(none).toContain('asks for no protective equipment')
  for (const words of [silent, none]) expect(words).toContain('the sheet and local rules decide')
})

it('knows a sheet that is filed or was read from none at all', () => {
  expect(
    [null, record({}), record({ sheetFileId: 'f' }), record({ hazardCodes: [] })].map(sheetKept),
  ).toEqual([false, false, true, true])
})
