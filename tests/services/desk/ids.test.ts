import { expect, it } from 'vitest'
import { idsInOrder } from '../../../main/services/desk/ids.ts'

it('ids of one list follow one another, and those of two lists never meet', () => {
  const [one, two] = [idsInOrder(), idsInOrder()]
  const list = Array.from({ length: 5_000 }, one)
  expect(list.toSorted()).toEqual(list)
  expect(new Set([...list, ...Array.from({ length: 5_000 }, two)]).size).toBe(10_000)
  // RFC 9562, sections 4 and 5.8: 8-4-4-4-12 hexadecimal digits, version 8, variant 10.
  for (const id of list)
    expect(id).toMatch(/^[\da-f]{8}-[\da-f]{4}-8[\da-f]{3}-[89ab][\da-f]{3}-[\da-f]{12}$/)
})
