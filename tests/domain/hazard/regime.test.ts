import { expect, it } from 'vitest'
import { normaliseCode, spelled } from '../../../main/domain/hazard/regime.ts'

it.each([
  ['p301 + P310', 'P301+P310'],
  ['H300+310', 'H300+H310'],
  ['h360Fd', 'H360Fd'],
  ['euh201a', 'EUH201A'],
  ['H 225', 'H225'],
])('%s is looked up as %s', (code, plain) => expect(normaliseCode(code)).toBe(plain))

it('vapour and oxidiser are spelled as each regime spells them', () => {
  const text = 'Flammable liquid and vapour; oxidiser'
  expect(spelled(text, 'eu-clp')).toBe(text)
  expect(spelled(text, 'un-ghs')).toBe('Flammable liquid and vapour; oxidizer')
  expect(spelled(text, 'us-osha')).toBe('Flammable liquid and vapor; oxidizer')
})
