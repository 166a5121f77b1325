import { expect, it } from 'vitest'
import { reachWords } from '../../../app/parts/reachWords.ts'

// RFC 1122, section 3.2.1.3: 127.0.0.0/8 is the host itself. RFC 4291, section 2.5.3: so is ::1 (from memory).
it.each([
  'http://127.0.0.1:4180/feed/a.ics',
  'http://127.9.0.3/feed/a.ics',
  'http://localhost:4180/feed/a.ics',
  'http://[::1]:4180/feed/a.ics',
])('says that %s works on this computer only', link => {
  expect(reachWords(link)).toContain('this computer only')
})

it('says that the address of the desktop window is of no use outside it', () => {
  expect(reachWords('lustrum://app/feed/a.ics')).toContain('no other program opens')
})

it.each([
  'http://192.0.2.7:4180/feed/a.ics',
  'https://desk.example.com/feed/a.ics',
  'http://127.example.com/feed/a.ics',
])('has nothing to say against %s', link => {
  expect(reachWords(link)).toBeNull()
})
