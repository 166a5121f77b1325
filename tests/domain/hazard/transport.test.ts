import { expect, it } from 'vitest'
import { readUnNumber } from '../../../main/domain/hazard/index.ts'

it('reads a UN number as people write it', () => {
  expect(['1263', 'un 1263', 'UN-1263', ' UN1263 '].map(text => readUnNumber(text))).toEqual(
    Array(4).fill('UN1263'),
  )
})

it.each(['12634', '126', 'UN', 'UN 12 63'])('refuses %s', text => {
  expect(() => readUnNumber(text)).toThrow(expect.objectContaining({ code: 'un-number-bad', value: text }))
})
