import { expect, test } from 'vitest'
import { fieldsOf } from '../../../app/data/fields.ts'

const row = { name: 'Wash', note: null as string | null, shared: false, minutes: { small: 30, large: 60 } }

function watched() {
  const changes: Partial<typeof row>[] = []
  const faults: Record<string, string> = { name: 'Give a name.', 'minutes.large': 'Too long.' }
  const fields = fieldsOf(
    row,
    part => changes.push(part),
    name => faults[name],
  )
  return { fields, changes }
}

test('a field shows what is held and what was refused of it, and puts what it is handed in its place', () => {
  const { fields, changes } = watched()
  const name = fields.field('name')
  expect(name).toMatchObject({ value: 'Wash', error: 'Give a name.' })
  name.onChange('Rinse')
  expect(changes).toEqual([{ name: 'Rinse' }])
})

test('a text that may be missing is empty for nothing, and nothing for empty', () => {
  const { fields, changes } = watched()
  const note = fields.optional('note')
  expect(note.value).toBe('')
  note.onChange('by the door')
  note.onChange('')
  expect(changes).toEqual([{ note: 'by the door' }, { note: null }])
})

test('one of a few words is never nothing', () => {
  const { fields, changes } = watched()
  fields.choice('name').onChange(null)
  expect(changes).toEqual([])
})

test('the fields of an object inside keep what stands beside them, and know their own refusals', () => {
  const { fields, changes } = watched()
  const minutes = fields.within('minutes')
  minutes.field('large').onChange(75)
  expect(changes).toEqual([{ minutes: { small: 30, large: 75 } }])
  expect(minutes.field('large').error).toBe('Too long.')
  expect(minutes.field('small').error).toBeUndefined()
})

test('the fields of each object in a list keep the others and their order, and know their own refusals', () => {
  const prices = [
    { from: 1, minor: 900 },
    { from: 6, minor: 800 },
  ]
  const changes: { prices?: typeof prices }[] = []
  const fields = fieldsOf(
    { prices },
    part => changes.push(part),
    name => (name === 'prices.1.minor' ? 'Too much.' : undefined),
  )
  const [first, second] = fields.each<(typeof prices)[number]>('prices')
  second?.field('minor').onChange(750)
  expect(changes).toEqual([
    {
      prices: [
        { from: 1, minor: 900 },
        { from: 6, minor: 750 },
      ],
    },
  ])
  expect(first?.field('minor')).toMatchObject({ value: 900, error: undefined })
  expect(second?.field('minor')).toMatchObject({ value: 800, error: 'Too much.' })
})
