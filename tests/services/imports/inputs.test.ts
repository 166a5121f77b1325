import { expect, test } from 'vitest'
import { openInput, readInput } from '../../../main/services/imports/inputs.ts'

test('a list says of at most 40 fields which column each is read from', () => {
  const reads = (count: number) =>
    readInput.safeParse({
      fileId: 'file',
      reading: {
        columns: Object.fromEntries(Array.from({ length: count }, (_, i) => [`field-${i}`, i])),
        dayOrder: null,
        mark: ',',
        volume: null,
      },
    })
  expect(reads(40).success).toBe(true)
  expect(reads(41).error?.issues.map(issue => issue.message)).toEqual(['That is more fields than there are.'])
})

test('a file comes whole or not at all', () => {
  const opens = (base64: string) =>
    openInput.safeParse({ kind: 'customers', fileName: 'list.csv', base64 }).success
  expect([opens('YSxi'), opens('YSx'), opens('no base64!')]).toEqual([true, false, false])
})
