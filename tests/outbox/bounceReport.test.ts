// RFC 3464 (delivery status notifications), 3463 (status codes), 5321 section 4.2.1 (reply codes).
import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { readBounces } from '../../main/outbox/bounceReport.ts'
import { workOf } from './readingWork.ts'

/** Laid out as in RFC 3464 appendix E.1, with invented names. */
const notification = [
  'Message-ID: <199407072116.RAA14128@mail.example.com>',
  'Subject: Returned mail: User unknown',
  '',
  '   ----- The following addresses had delivery problems -----',
  '<ann@lake.example.com>  (unrecoverable error)',
  '',
  'Reporting-MTA: dns; mail.example.com',
  '',
  'Original-Recipient: rfc822;ann@lake.example.com',
  'Final-Recipient: rfc822;ann@lake.example.com',
  'Action: failed',
  'Status: 5.1.1',
  'Diagnostic-Code: smtp; 550 User unknown',
  '',
  'Final-Recipient: RFC822;',
  '\tben@hill.example.com',
  'Action: delayed',
  'Status: 4.4.2 (connection dropped)',
  '',
  'Message-ID:',
  ' <visit-7@shop.example.com>',
]

describe('a delivery status notification', () => {
  it.each(['\n', '\r\n', '\r'])('names each recipient with what happened (lines end in %j)', end => {
    expect(readBounces(notification.join(end))).toEqual([
      {
        address: 'ann@lake.example.com',
        status: '5.1.1',
        permanent: true,
        messageId: '<visit-7@shop.example.com>',
      },
      {
        address: 'ben@hill.example.com',
        status: '4.4.2',
        permanent: false,
        messageId: '<visit-7@shop.example.com>',
      },
    ])
  })

  it('without a status says what was done, without an action goes by the status', () => {
    const report = (...lines: string[]) =>
      readBounces(['Final-Recipient: rfc822; a@b.example.com', ...lines].join('\n'))
    expect(report('Action: failed')).toMatchObject([{ status: 'failed', permanent: true, messageId: null }])
    expect(report('Status: 5.0.0')).toMatchObject([{ status: '5.0.0', permanent: true }])
    expect(report('Status: 4.0.0')).toMatchObject([{ status: '4.0.0', permanent: false }])
    expect(report('Action: delayed', 'Status: 5.0.0')).toMatchObject([{ permanent: false }])
    expect(report()).toMatchObject([{ status: 'no status given', permanent: false }])
  })
})

describe('a report in prose', () => {
  it.each([
    ['550 5.1.1 <ann@example.com>: no such user', '550'],
    ['I could not deliver to ann@example.com. The host said 554-refused', '554'],
    ['Mail to (ann@example.com) failed: 5.7.1', '5.7.1'],
  ])('%s', (text, status) => {
    expect(readBounces(text)).toEqual([
      { address: 'ann@example.com', status, permanent: true, messageId: null },
    ])
  })

  it.each([
    'Thank you for your order, ann@example.com',
    '450 ann@example.com is busy',
    '550 no such user @ .',
  ])('says nothing of "%s"', text => expect(readBounces(text)).toEqual([]))

  // A domain needs a letter between the at sign and its last dot; a full stop after the address is the sentence's.
  it.each([
    ['550 ann@.com', []],
    ['550 ann@example.', []],
    ['550 @example.com', []],
    ['550 ann@e.com.', ['ann@e.com']],
  ])('%j names %j', (words, addresses) => {
    expect(readBounces(words).map(({ address }) => address)).toEqual(addresses)
  })
})

describe('a hostile report', () => {
  const shapes: [string, (size: number) => string][] = [
    ['at signs', size => '@'.repeat(size)],
    ['at signs and dots', size => 'a@b.'.repeat(size / 4)],
    ['one word, no at sign', size => 'x'.repeat(size)],
    ['a recipient of at signs', size => `Final-Recipient: ${'a@'.repeat(size / 2)}`],
    ['a recipient of dots', size => `Final-Recipient: a@${'.'.repeat(size)}`],
    ['empty lines', size => '\n'.repeat(size)],
    ['lines of blanks', size => '\n '.repeat(size / 2)],
    ['blanks without an end', size => `x\n${' '.repeat(size)}x`],
    ['folded lines', size => `Message-ID: <a\n${' b\n'.repeat(size / 3)}`],
    ['open brackets', size => `Message-ID: ${'<'.repeat(size)}`],
    ['carriage returns', size => '\r'.repeat(size)],
    ['fives', size => '5.5.5.5 555'.repeat(size / 11)],
    ['message ids', size => 'Message-ID: <a@b>\n'.repeat(size / 18)],
    ['colons', size => ':'.repeat(size)],
  ]

  /** How much more work sixteen times the text is: in proportion 16 times, by the square 256, by the cube 4,096. */
  const growth = (read: (text: string) => unknown, shape: (size: number) => string) => {
    const [small, large] = [shape(1024), shape(16 * 1024)]
    return workOf(() => read(large)) / workOf(() => read(small))
  }

  it.each(shapes)('of %s is read with work that grows with its length', (_, shape) => {
    expect(growth(readBounces, shape)).toBeLessThan(20)
  })

  it('is read by no pattern that repeats without bound, whose work no count sees', () => {
    const source = readFileSync(new URL('../../main/outbox/bounceReport.ts', import.meta.url), 'utf8')
    const patterns = [...source.matchAll(/[(=&] ?!?(\/(?:\[[^\]]*\]|\\.|[^/*\\[\n])+\/)/g)].map(
      ([, one]) => one!,
    )
    expect(patterns).toHaveLength(5)
    for (const pattern of patterns) expect(pattern).not.toMatch(/[*+]|,\}/)
    expect(source).not.toContain('RegExp')
  })

  it('that were trimmed at the front again and again would show', () => {
    const byTrimming = (text: string) => {
      let left = text
      while (left !== '') left = left.slice(1).trimStart()
    }
    expect(growth(byTrimming, size => ' a'.repeat(size / 2))).toBeGreaterThan(200)
  })

  it.each(shapes)('of %s and a megabyte is read no further than the first quarter', (_, shape) => {
    const text = shape(1024 * 1024)
    const late = `${text}\n\nFinal-Recipient: rfc822; ann@late.example.com\nAction: failed`
    expect(readBounces(late).map(({ address }) => address)).not.toContain('ann@late.example.com')
  })
})
