import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { checkHeaderText } from '../../../../main/domain/upkeep/reminders/headerText.ts'
import { mergeValues } from '../../../../main/domain/upkeep/reminders/mergeValues.ts'
import {
  checkTemplate,
  fill,
  LAW_NOTE,
  languageFor,
  MERGE_FIELDS,
  type MergeField,
  type Template,
} from '../../../../main/domain/upkeep/reminders/template.ts'
import { startingTemplates, VISIT_NAMES } from '../../../../main/domain/upkeep/reminders/templates/index.ts'
import { utc } from './arbitraries.ts'

const facts = {
  ownerName: 'Ann Example',
  carName: 'Merle Coupe, blue',
  plate: 'ABC 123',
  visitName: 'protection renewal',
  dueOn: '2026-09-14',
  lastOn: '2026-03-14',
  slotAts: [utc('2026-09-14T13:00Z'), utc('2026-09-16T18:30Z')],
  heldUntilAt: utc('2026-09-01T21:00Z'),
  shopName: 'Example Shine',
  shopPhone: '+1 212 555 0123',
  shopAddress: '1 Example Street, Exampleton',
  stopWay: 'stop@example.com',
}
const values = mergeValues(facts, 'en', 'America/New_York')

describe('starting templates', () => {
  const all = startingTemplates().flatMap(template =>
    Object.entries(template.words).map(([language, words]) => ({ template, language, words })),
  )

  it.each(all)(
    '$template.id in $language is sound and fills up completely',
    ({ template, language, words }) => {
      checkTemplate(template)
      const filled = fill(words, mergeValues(facts, language, 'America/New_York'))
      expect(filled.unfilled).toEqual([])
      expect(`${filled.subject}${filled.body}`).not.toMatch(/[{}]|____|undefined/)
      for (const needed of ['ABC 123', 'Example Shine', 'stop@example.com'])
        if (!(template.channel === 'call' && needed === 'ABC 123')) expect(filled.body).toContain(needed)
    },
  )

  it('are one a channel, each in three languages, with a name for every kind of visit', () => {
    expect(startingTemplates().map(template => template.channel)).toEqual(['email', 'letter', 'text', 'call'])
    for (const { words } of startingTemplates()) expect(Object.keys(words)).toEqual(['en', 'de', 'es'])
    for (const names of Object.values(VISIT_NAMES))
      expect(Object.keys(names)).toEqual(['first-wash', 'check-up', 'topper', 'inspection'])
  })

  it('write dates and times as the language does, in the zone of the shop', () => {
    expect(values).toMatchObject({ dueDate: 'September 14, 2026' })
    expect(values.slotOne).toMatch(/Monday, September 14.*9:00 AM/)
    expect(mergeValues(facts, 'de', 'America/New_York')).toMatchObject({ dueDate: '14. September 2026' })
    expect(mergeValues(facts, 'en', 'Europe/Berlin').slotOne).toMatch(/3:00 PM/)
    expect(mergeValues({ ...facts, slotAts: [], heldUntilAt: null }, 'en', 'UTC')).toMatchObject({
      slotOne: '',
      heldUntil: '',
    })
  })

  it('carry a warning that names no law as kept', () => {
    expect(LAW_NOTE).toContain('subject to local law')
    expect(LAW_NOTE).not.toMatch(/compl(y|ies|iant)|GDPR|CAN-SPAM|TCPA|CASL|PECR/i)
  })
})

describe('filling in', () => {
  it('names every field nothing is known for, and shows where', () => {
    const filled = fill(
      { subject: '{{visitName}}', body: '{{ ownerName }}, {{plate}}, {{plate}}' },
      { ownerName: ' Ann ' },
    )
    expect(filled).toEqual({ subject: '____', body: 'Ann, ____, ____', unfilled: ['visitName', 'plate'] })
  })

  it('takes braces in a name for a name', () => {
    const filled = fill(
      { subject: 's', body: '{{ownerName}}' },
      { ownerName: '{{plate}} $& $1', plate: 'ABC 123' },
    )
    expect(filled.body).toBe('{{plate}} $& $1')
  })

  it('lets no value or template begin a header', () => {
    const fields = Object.keys(MERGE_FIELDS) as MergeField[]
    const nasty = fc
      .tuple(
        fc.string(),
        fc.constantFrom('\r\n', '\n', '\r', '\u0000', '\u0085', '\u2028', '\u2029', '\u000b'),
        fc.string(),
      )
      .map(parts => `x${parts.join('')}y`)
    fc.assert(
      fc.property(fc.constantFrom(...fields), nasty, (field, value) => {
        const words = { subject: 'Hello', body: `{{${field}}}` }
        expect(() => fill(words, { ...values, [field]: value })).toThrow(
          expect.objectContaining({ code: 'header-unsafe', field: `values.${field}` }),
        )
        expect(() => fill({ subject: value.replaceAll('{', '('), body: 'b' }, values)).toThrow(
          expect.objectContaining({ code: 'header-unsafe' }),
        )
        expect(() => checkHeaderText(value, 'name')).toThrow(expect.objectContaining({ field: 'name' }))
      }),
    )
    fc.assert(
      fc.property(fc.string({ unit: 'grapheme' }), name => {
        try {
          expect(fill({ subject: '{{ownerName}}', body: 'b' }, { ownerName: name }).subject).not.toMatch(
            /[\r\n]/,
          )
        } catch (error) {
          expect(error).toMatchObject({ code: 'header-unsafe' })
        }
      }),
    )
  })

  it('ends lines one way', () => {
    expect(fill({ subject: 's', body: 'a\r\nb\rc\nd' }, {}).body).toBe('a\nb\nc\nd')
  })

  it.each([
    [{ subject: 's', body: '{{owner}}' }, 'field-unknown', 'words.body'],
    [{ subject: '{{toString}}', body: 'b' }, 'field-unknown', 'words.subject'],
    [{ subject: 's', body: 'Dear {{ownerName' }, 'brace-open', 'words.body'],
    [{ subject: 's', body: 'Dear ownerName}}' }, 'brace-open', 'words.body'],
    [{ subject: 's', body: ' \n' }, 'body-empty', 'words.body'],
    [{ subject: 'a\nb', body: 'b' }, 'header-unsafe', 'words.subject'],
  ])('refuses %j', (words, code, field) => {
    expect(() => fill(words, values)).toThrow(expect.objectContaining({ code, field }))
  })

  it.each([
    [{ words: {} }, 'no-words'],
    [{ words: { 'not a tag': { subject: 's', body: 'b' } } }, 'language-bad'],
    [{ words: { en: { subject: ' ', body: 'b' } } }, 'subject-empty'],
  ])('refuses the template %j', (change, code) => {
    expect(() =>
      checkTemplate({ id: 't', channel: 'email', ...(change as Pick<Template, 'words'>) }),
    ).toThrow(expect.objectContaining({ code }))
  })
})

describe('the language', () => {
  it.each([
    [['en', 'de', 'de-CH'], 'de-CH', 'de-CH'],
    [['en', 'de', 'de-CH'], 'de-AT', 'de'],
    [['en', 'de-CH'], 'de-AT', 'de-CH'],
    [['de', 'en'], 'fr', 'en'],
    [['de', 'es'], 'fr', 'de'],
    [['EN', 'de'], 'en-gb', 'EN'],
  ])('of %j for %s is %s', (available, wanted, chosen) => {
    expect(languageFor(available, wanted, 'en-US')).toBe(chosen)
  })

  it('is refused where there is none', () => {
    expect(() => languageFor([], 'en', 'en')).toThrow(expect.objectContaining({ code: 'no-words' }))
  })
})
