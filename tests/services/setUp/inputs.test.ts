import { expect, test } from 'vitest'
import { papersInput } from '../../../main/services/setUp/inputs.ts'

const papers = { version: 0, paper: null, colour: '#31456b' }

test('a logo comes as its bytes; left out it stays, null takes it off', () => {
  const logo = { fileName: 'logo.png', base64: 'AQID/w==' }
  expect(papersInput.parse({ ...papers, logo }).logo).toEqual({
    fileName: 'logo.png',
    bytes: Uint8Array.of(1, 2, 3, 255),
  })
  expect(papersInput.parse(papers)).not.toHaveProperty('logo')
  expect(papersInput.parse({ ...papers, logo: null }).logo).toBeNull()
})

test('one cut off on the way is refused in words', () => {
  const cut = papersInput.safeParse({ ...papers, logo: { fileName: 'logo.png', base64: 'AQI' } })
  expect(cut.error?.issues.map(issue => issue.message)).toEqual([
    'The file did not come whole; choose it again.',
  ])
})
