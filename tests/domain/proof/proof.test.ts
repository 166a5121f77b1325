import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  codeText,
  momentForGood,
  readCode,
  readStatement,
  statementText,
  verdictOf,
} from '../../../main/domain/proof/index.ts'

const letters = (length: number) => fc.stringMatching(new RegExp(`^[A-Za-z0-9_-]{${length}}$`))

describe('a certificate’s code', () => {
  it('is read as it was written, with blanks wherever a scanner or a hand put them', () => {
    const code = fc.record({
      reference: fc.tuple(fc.nat(999_999), fc.nat(99)).map(([job, page]) => `${job}-${page}`),
      digest: letters(43),
      signature: letters(86),
      key: letters(8),
    })
    fc.assert(
      fc.property(code, fc.nat(150), (given, at) => {
        const text = codeText(given)
        expect(readCode(`${text.slice(0, at)} \n${text.slice(at)}`)).toEqual(given)
      }),
    )
  })

  it('is refused in words where it is none', () => {
    for (const bad of [
      '',
      'LUSTRUM1',
      'https://example.com',
      codeText({ reference: '1', digest: '', signature: '', key: '' }),
    ])
      expect(() => readCode(bad)).toThrow('This is no code of a certificate')
  })
})

describe('a statement', () => {
  it('is the same however its blanks, line ends and accents were typed', () => {
    const text = statementText([
      {
        title: 'Car',
        facts: [
          ['Name', 'Café  Ray'],
          ['Note', ''],
        ],
      },
    ])
    expect(text).toBe('# Car\nName: Café Ray\n')
    expect(readStatement(' # Car \r\n\r\nName:  Cafe\u0301 Ray')).toBe(text)
  })

  it('survives being read back, whatever stands in it', () => {
    const words = fc.string({ unit: 'grapheme', maxLength: 40 })
    fc.assert(
      fc.property(fc.array(fc.tuple(words, words)), facts => {
        const text = statementText([{ title: 'T', facts }])
        expect(readStatement(text)).toBe(text)
      }),
    )
  })

  it('says a moment with its year in the shop’s own time', () => {
    // 15 April 2026 13:40 UTC; New York is four hours behind in April (IANA time zone database).
    const at = Date.UTC(2026, 3, 15, 13, 40) / 60_000
    expect(momentForGood(at, 'America/New_York')).toBe('15 April 2026, 09:40')
    expect(momentForGood(at, 'Asia/Tokyo')).toBe('15 April 2026, 22:40')
  })
})

it('A yes needs the key, the signature, the record and the paper all to agree', () => {
  const all = {
    keyKnown: true,
    signatureRight: true,
    recordDigest: 'a',
    paperDigest: 'a',
    signedDigest: 'a',
    corrected: false,
  }
  expect(verdictOf(all)).toBe('agrees')
  expect(verdictOf({ ...all, paperDigest: null })).toBe('agrees')
  for (const [change, verdict] of [
    [{ keyKnown: false }, 'unknown-key'],
    [{ signatureRight: false }, 'forged'],
    [{ paperDigest: 'b' }, 'paper-changed'],
    [{ recordDigest: null }, 'no-record'],
    [{ recordDigest: 'b' }, 'record-changed'],
    [{ corrected: true }, 'agrees-but-corrected'],
  ] as const)
    expect(verdictOf({ ...all, ...change })).toBe(verdict)
})
