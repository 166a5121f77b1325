import { describe, expect, it } from 'vitest'
import { inTurn } from '../../../../app/screens/plan/inTurn.ts'
import { say } from '../../../../main/domain/language/index.ts'
import { speaking } from '../../../../main/services/desk/speaking.ts'

describe('the bays of a car in turn', () => {
  it('are joined in English and in German', () => {
    expect(inTurn([])).toBe('')
    expect(inTurn(['Bay 1'])).toBe('Bay 1')
    expect(inTurn(['Bay 1', 'Bay 3', 'Bay 2'])).toBe('Bay 1, then Bay 3, then Bay 2')
    expect(speaking('de', () => inTurn(['Platz 1', 'Platz 3']))).toBe('Platz 1, dann Platz 3')
  })
})

describe('what keeping a supposed case does', () => {
  const text = 'Keeping it moves {cars, plural, =0 {no car} one {1 car} other {{cars} cars}} and {kept}.'
  const inGerman = (cars: number) => speaking('de', () => say(text, { cars, kept: 'sperrt den Platz' }))

  it('counts the cars as each language does', () => {
    expect(say(text, { cars: 0, kept: 'closes the bay' })).toBe('Keeping it moves no car and closes the bay.')
    expect([0, 1, 3].map(inGerman)).toEqual([
      'Übernehmen verschiebt kein Auto und sperrt den Platz.',
      'Übernehmen verschiebt 1 Auto und sperrt den Platz.',
      'Übernehmen verschiebt 3 Autos und sperrt den Platz.',
    ])
  })
})
