import { expect, it } from 'vitest'
import { hazardStatement, precautionaryStatement } from '../../../main/domain/hazard/index.ts'
import { say } from '../../../main/domain/language/index.ts'
import { speaking } from '../../../main/services/desk/speaking.ts'

it.each(['__proto__', 'constructor', 'toString'])('"%s" is a text like another, and no code', typed => {
  expect(speaking('de', () => say(typed))).toBe(typed)
  for (const statement of [hazardStatement, precautionaryStatement])
    expect(() => statement(typed)).toThrow(/copy the [HP] codes/)
})

it('puts values in as they stand, whatever signs are in them', () => {
  expect(say('Bay {bay} is taken', { bay: "{left} 'old' <b>" })).toBe("Bay {left} 'old' <b> is taken")
})
