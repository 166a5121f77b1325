import { say, word } from '../../language/index.ts'
import { refuse } from '../../refusal.ts'
import type { Channel } from './consent.ts'
import { checkHeaderText, headerProblem } from './headerText.ts'

/** The merge fields a template may hold, with what they stand for, as `{{ownerName}}`. */
export const MERGE_FIELDS = {
  ownerName: word("the owner's name"),
  carName: word('the car: make, model, colour'),
  plate: word('its number plate'),
  visitName: word('what is due'),
  dueDate: word('when it is due'),
  lastDate: word('when the car was last in the shop'),
  slotOne: word('the first slot proposed'),
  slotTwo: word('the second slot proposed'),
  heldUntil: word('until when the slots are held'),
  shopName: word("the shop's name"),
  shopPhone: word("the shop's telephone"),
  shopAddress: word("the shop's address, on one line"),
  stopWay: word('how to ask for no more messages'),
} as const

export type MergeField = keyof typeof MERGE_FIELDS
export type MergeValues = Readonly<Partial<Record<MergeField, string>>>

/** The words of a template in one language. Only e-mails have a subject; for the others it is a heading. */
export interface TemplateWords {
  readonly subject: string
  readonly body: string
}

export interface Template {
  readonly id: string
  readonly channel: Channel
  /** By language tag, such as "en" or "de-CH". */
  readonly words: Readonly<Record<string, TemplateWords>>
}

/** Stands on every template: what a shop writes to sell is under laws this program cannot know. */
export const LAW_NOTE = word(
  'Marketing messages are subject to local law: consent, sender details, hours, a way out. This program keeps what you enter; whether a message is allowed is for you, and where in doubt a lawyer, to say.',
)

export interface Filled extends TemplateWords {
  /** Fields in the text that nothing is known for; they stand as ____ in it. */
  readonly unfilled: readonly MergeField[]
}

// The blanks around a name are trimmed apart: three quantifiers over one stretch of blanks would take its length cubed.
const FIELD = /\{\{([^{}]*)\}\}/g
const BLANK = '____'

function isField(name: string): name is MergeField {
  return Object.hasOwn(MERGE_FIELDS, name)
}

/** Refuses words with a field that does not exist, a brace left open, or a line end in the subject. */
export function checkWords(words: TemplateWords, field: string): void {
  checkHeaderText(words.subject, `${field}.subject`)
  for (const part of ['subject', 'body'] as const) {
    for (const [whole, name] of words[part].matchAll(FIELD))
      if (!isField(name!.trim()))
        refuse(
          'field-unknown',
          { [`${field}.${part}`]: whole },
          say('{whole} is no field; there are {fields}.', {
            whole,
            fields: Object.keys(MERGE_FIELDS).join(', '),
          }),
        )
    const rest = words[part].replace(FIELD, '')
    const brace = /\{\{|\}\}/.exec(rest)
    if (brace)
      refuse(
        'brace-open',
        { [`${field}.${part}`]: brace[0] },
        say("{brace} stands alone; a field is written '{''{'ownerName'}''}'.", { brace: brace[0] }),
      )
  }
  if (words.body.trim() === '')
    refuse('body-empty', { [`${field}.body`]: words.body }, say('There is nothing to send; write the text.'))
}

/** Refuses a template without words, with words `checkWords` refuses, a language tag that is none, or an e-mail without a subject. */
export function checkTemplate(template: Template): void {
  const languages = Object.entries(template.words)
  if (languages.length === 0)
    refuse('no-words', { words: template.words }, say('Write the template in at least one language.'))
  for (const [language, words] of languages) {
    try {
      Intl.getCanonicalLocales(language)
    } catch {
      refuse(
        'language-bad',
        { [`words.${language}`]: language },
        say('"{language}" is no language tag; use one such as en or de-CH.', { language }),
      )
    }
    checkWords(words, `words.${language}`)
    if (template.channel === 'email' && words.subject.trim() === '')
      refuse(
        'subject-empty',
        { [`words.${language}.subject`]: words.subject },
        say('An e-mail needs a subject.'),
      )
  }
}

/**
 * The language of a template that suits an owner best: the very one, then the same language of anywhere, then the
 * shop's, then the first there is.
 */
export function languageFor(available: readonly string[], wanted: string, shopLanguage: string): string {
  const base = (tag: string) => tag.split('-')[0]!.toLowerCase()
  const first = (test: (tag: string) => boolean) => available.find(test)
  const chosen =
    first(tag => tag.toLowerCase() === wanted.toLowerCase()) ??
    first(tag => tag.toLowerCase() === base(wanted)) ??
    first(tag => base(tag) === base(wanted)) ??
    first(tag => tag.toLowerCase() === shopLanguage.toLowerCase()) ??
    first(tag => base(tag) === base(shopLanguage)) ??
    available[0]
  if (chosen === undefined)
    refuse('no-words', { words: available }, say('The template has no language; write it in one.'))
  return chosen
}

/**
 * Words with their fields filled in. Values are put in as they are, once: braces in a name are a name, not a field. A
 * value with a line end or other control sign is refused wherever it stands, so that no name can begin a header. Empty
 * values count as unknown.
 */
export function fill(words: TemplateWords, values: MergeValues): Filled {
  checkWords(words, 'words')
  const unfilled = new Set<MergeField>()
  const put = (text: string) =>
    text.replace(FIELD, (whole: string, inner: string) => {
      const name = inner.trim()
      if (!isField(name)) return whole
      const value = values[name]?.trim() ?? ''
      if (value === '') {
        unfilled.add(name)
        return BLANK
      }
      const problem = headerProblem(value)
      if (problem) refuse('header-unsafe', { [`values.${name}`]: value }, problem)
      return value
    })
  const subject = put(words.subject)
  return { subject, body: put(words.body.replace(/\r\n?/g, '\n')), unfilled: [...unfilled] }
}
