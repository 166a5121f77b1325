import { expect, it } from 'vitest'
import { mailHref } from '../../../app/parts/mailHref.ts'

it('writes a letter as the examples of RFC 6068 are written', () => {
  // Section 6.1, the examples of a body of two lines and of addresses with characters that mean something in a link.
  expect(mailHref({ to: 'gorby%kremvax@example.com', subject: 'current-issue', text: '' })).toBe(
    'mailto:gorby%25kremvax@example.com?subject=current-issue&body=',
  )
  expect(mailHref({ to: 'unlikely?address@example.com', subject: '', text: '' })).toMatch(
    /^mailto:unlikely%3Faddress@example\.com\?/,
  )
  expect(
    mailHref({ to: 'infobot@example.com', subject: '', text: 'send current-issue\nsend index' }),
  ).toMatch(/&body=send%20current-issue%0D%0Asend%20index$/)
})

it('lets no character of the words become a part of the link', () => {
  const letter = { to: 'a&b+c@example.com', subject: 'A & B = ready?', text: 'Für Zoë #1\r\n100 %' }
  const link = new URL(mailHref(letter))
  expect(decodeURIComponent(link.pathname)).toBe(letter.to)
  expect([...new URLSearchParams(link.search)]).toEqual([
    ['subject', letter.subject],
    ['body', letter.text],
  ])
})
