import { expect, test } from 'vitest'
import { checkTags } from '../../../main/domain/shop/index.ts'

test('tags are kept once each, trimmed, and no more than can be told apart', () => {
  expect(checkTags([' Monthly', 'monthly', '', 'north  side'])).toEqual(['Monthly', 'north side'])
  expect(() => checkTags(Array.from({ length: 21 }, (_, i) => `t${i}`))).toThrow(/keep 20/)
  expect(() => checkTags(['x'.repeat(41)])).toThrow(/40/)
})
