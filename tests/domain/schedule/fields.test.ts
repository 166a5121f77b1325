import { expect, test } from 'vitest'
import {
  apartAt,
  distinctIds,
  flagAt,
  knownAt,
  listAt,
  spanAt,
  textAt,
  wholeAt,
  wholeOrNullAt,
} from '../../../main/domain/schedule/fields.ts'

test('What is sound is read as it is', () => {
  expect(wholeAt(7, 'n', 1, 60)).toBe(7)
  expect(wholeOrNullAt(null, 'n', 1)).toBeNull()
  expect(flagAt(undefined, 'split', false)).toBe(false)
  expect(spanAt([1, 3], 'open')).toEqual({ from: 1, to: 3 })
  expect(
    apartAt(
      [
        [5, 9],
        [1, 5],
      ],
      'open',
    ),
  ).toEqual([
    { from: 5, to: 9 },
    { from: 1, to: 5 },
  ])
  expect(listAt(undefined, 'crew', textAt, [])).toEqual([])
})

test.each([
  ['grid', () => wholeAt(61, 'grid', 1, 60), '61 will not do; give a whole number from 1 to 60.'],
  ['grid', () => wholeAt(undefined, 'grid', 1, 60), 'is missing; give a whole number from 1 to 60.'],
  ['open', () => spanAt([3, 3], 'open'), '[3,3] will not do; let it end after it begins.'],
  [
    'open.0',
    () =>
      apartAt(
        [
          [4, 9],
          [1, 5],
        ],
        'open',
      ),
    '[4,9] will not do; it overlaps [1,5], so join the two or shorten one.',
  ],
  ['steps.1', () => listAt(['a', ''], 'steps', textAt), '"" will not do; give a name in quotes.'],
  ['bay', () => knownAt('b', 'bay', new Set(['a']), 'bays'), '"b" will not do; give one of the bays: a.'],
  [
    'bays.1.id',
    () => distinctIds([{ id: 'a' }, { id: 'a' }], 'bays'),
    '"a" will not do; give every one its own id.',
  ],
])('A refusal names the field %s and the remedy', (field, read, words) => {
  expect(read).toThrow(expect.objectContaining({ field, message: words }))
})
