import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Findable } from '../../../main/domain/search/entry.ts'
import { PeopleIndex } from '../../../main/domain/search/index.ts'
import { askedFor, recallAt } from './recall.ts'

const car = { plate: '', make: '', model: '', colour: '', year: null, vin: null }
function person(id: string, name: string, more: Partial<Findable> = {}): Findable {
  return { id, name, archived: false, phone: null, email: null, cars: [], ...more }
}

const shop = [
  person('a', 'Zoë Thorolf', { phone: '+12125550142', email: 'zoe@example.com' }),
  person('b', 'Ines Vale', {
    cars: [{ ...car, plate: 'KFR 2040', make: 'Marlo', model: 'Wendrel', vin: '1M8GDM9AXKP042788' }],
  }),
  person('c', 'Vale Inestroza', { cars: [{ ...car, plate: 'VA 11', colour: 'deep blue', year: 2021 }] }),
  person('d', 'Jürgen Łuczak', { archived: true }),
]
const index = new PeopleIndex(shop)

describe('who is found', () => {
  it.each([
    ['zoe', ['a']],
    ['THOROLF zoë', ['a']],
    ['5550142', ['a']],
    ['0212 555', ['a']],
    ['zoe@exa', ['a']],
    ['kfr2040', ['b']],
    ['KFR 2O4O', ['b']],
    // The last of the identification number, as it is read off the windscreen.
    ['042788', ['b']],
    ['blue 2021', ['c']],
    // A whole word before the beginning of one.
    ['ines', ['b', 'c']],
    ['vale ines', ['b', 'c']],
    // With a slip of the hand: swapped, missing, one too many.
    ['throolf', ['a']],
    ['thorlf', ['a']],
    ['wendrell', ['b']],
    ['nobody', []],
    ['', ['b', 'c', 'a']],
  ])('by "%s": %j', (text, ids) => {
    expect(index.find(text)).toEqual(ids)
  })

  it('leaves out who was put away, unless asked', () => {
    expect(index.find('jurgen')).toEqual([])
    expect(index.find('jurgen', true)).toEqual(['d'])
  })

  it('has no slip in a short word or a number', () => {
    expect(index.find('vlae')).toEqual(['b', 'c'])
    expect(index.find('zeo')).toEqual([])
    expect(index.find('kfr2041')).toEqual([])
  })
})

it('changed in place it answers as one made anew', () => {
  const names = fc.constantFrom('Ana Birch', 'Bo Birch', 'Cleo Ash', 'Dag Elm', 'Birch Ana', 'Éva Ash')
  const act = fc.record({ id: fc.constantFrom('1', '2', '3', '4', '5'), name: fc.option(names) })
  const texts = ['', 'birch', 'ash', 'brich', 'ana b', 'elm']
  fc.assert(
    fc.property(fc.array(act, { maxLength: 30 }), acts => {
      const changed = new PeopleIndex()
      const known = new Map<string, Findable>()
      for (const { id, name } of acts) {
        if (name === null) {
          changed.drop(id)
          known.delete(id)
        } else {
          changed.put(person(id, name))
          known.set(id, person(id, name))
        }
      }
      const anew = new PeopleIndex(known.values())
      for (const text of texts) expect(changed.find(text)).toEqual(anew.find(text))
    }),
  )
})

it('finds whom it was asked for among the first five, 95 times in 100', () => {
  const { people, asked } = askedFor(3_000, 200)
  const { recall, missed } = recallAt(new PeopleIndex(people), asked, 5)
  console.log(
    `${asked.length} questions at ${people.length} people: recall at 5 is ${recall}; missed ${missed}`,
  )
  expect(recall).toBeGreaterThanOrEqual(0.95)
})
