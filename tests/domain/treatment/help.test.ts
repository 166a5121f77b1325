import { expect, test } from 'vitest'
import { bothHelped, helpWithin } from '../../../main/domain/treatment/help.ts'

const early = { help: { crew: 1, from: 0, minutes: 30 } }
const late = { help: { crew: 2, from: 60, minutes: 60 } }

test('Two templates of one step are helped from the earlier to the later end, by as many as the greater asks', () => {
  expect(bothHelped(early, late)).toEqual({ crew: 2, from: 0, minutes: 120 })
  expect(bothHelped({}, late)).toEqual(late.help)
  expect(bothHelped(early, { help: null })).toEqual(early.help)
  expect(bothHelped({}, {})).toBeNull()
})

test('A shorter step on a smaller car keeps what of the help lies within it', () => {
  expect(helpWithin(late, 240)).toEqual(late.help)
  expect(helpWithin(late, 90)).toEqual({ crew: 2, from: 60, minutes: 30 })
  expect(helpWithin(late, 60)).toBeNull()
  expect(helpWithin({}, 60)).toBeNull()
})
