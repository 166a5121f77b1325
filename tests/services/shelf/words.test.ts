import { expect, it } from 'vitest'
import { speaking } from '../../../main/services/desk/speaking.ts'
import { moveWords } from '../../../main/services/shelf/words.ts'

const move = { kind: 'use', centi: -3_800, lotNumber: 412, why: null, correctsSeq: null }

it('tells a use by the step it served, else as one of its own', () => {
  const job = { plate: 'KFR 204', stepName: 'First layer' }
  expect(moveWords(move, 'ml', job)).toBe('used 38 ml of no. 412 for "First layer" of KFR 204')
  expect(moveWords({ ...move, why: 'test panel' }, 'ml', null)).toBe('used 38 ml of no. 412: test panel')
})

it('says of a count and of a correction which way they went', () => {
  expect(moveWords({ ...move, kind: 'count' }, 'ml', null)).toBe(
    'counted no. 412: 38 ml less than the ledger had',
  )
  expect(moveWords({ ...move, kind: 'count', centi: 100 }, 'ml', null)).toContain('1 ml more than')
  expect(moveWords({ ...move, kind: 'correction', centi: 100, correctsSeq: 7 }, 'ml', null)).toBe(
    'put right line 7: back into no. 412 1 ml',
  )
})

it('says the ledger in German', () => {
  speaking('de', () => {
    expect(moveWords({ ...move, kind: 'count' }, 'ml', null)).toBe(
      'Nr. 412 gezählt: 38 ml weniger als im Lagerbuch',
    )
    expect(moveWords({ ...move, kind: 'correction', centi: 100, correctsSeq: 7 }, 'ml', null)).toBe(
      'Zeile 7 berichtigt: 1 ml zurück in Nr. 412',
    )
  })
})
