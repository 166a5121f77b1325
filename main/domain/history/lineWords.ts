/** A line of the audit in words, to be read behind who did it: "Mara · changed the size from medium to large". */

import { durationWords } from '../calendar/index.ts'
import { decimalNow, say, sayKept, word } from '../language/index.ts'
import { amountWords, type Unit } from '../shelf/index.ts'
import { listWords } from '../words.ts'
import { sayAct, sayThing } from './actNames.ts'
import { sayField } from './fieldNames.ts'
import { type Detail, jobWords, type When } from './jobWords.ts'

export interface Line {
  readonly act: string
  readonly entity: string
  readonly entityId: string
  readonly detail: unknown
}

/** What the words are made with. */
export interface Say {
  readonly when: When
  readonly money: (minor: number) => string
  /** What people call the row of this id; undefined where nobody does. */
  readonly nameOf: (id: string) => string | undefined
  /** What the product, or the bottle, of this id is measured in; undefined where it is neither, or is gone. */
  readonly unitOf: (id: string) => Unit | undefined
}

/** The same for one line: amounts in it are in hundredths of one unit. */
interface OfLine extends Say {
  readonly unit: Unit | undefined
}

/** What the house's own verbs are in a sentence; any other act says itself. */
const verbs: Readonly<Record<string, string>> = {
  archived: word('put away'),
  restored: word('taken back into use'),
  ordered: word('put in another order'),
  erased: word('erased: name and addresses taken out everywhere'),
  'data packed': word('everything packed into a file to take along'),
}

/** Fields whose name says too little, or too much. */
const called: Readonly<Record<string, string>> = {
  sizeClass: 'size',
  customerId: 'owner',
  goneId: 'entry',
  keptId: 'entry',
  vin: 'VIN',
  email: 'e-mail',
  at: 'time',
  centi: 'amount',
}

/** What the line says; fields that no word is known for are named, never shown as code. */
export function sayLine(line: Line, known: Say): string {
  const { act, entity, detail } = line
  const told = (typeof detail === 'object' && detail !== null ? detail : {}) as Detail
  if (act === 'undone' || act === 'put again') return againWords(line, told, known)
  const facts = { ...known, unit: unitIn(line, told, known) }
  const own = entity === 'job' ? jobWords[act] : undefined
  if (own) return own(told, facts.when)
  if (act === 'erased') return say(verbs[act]!)
  const [, noun = '', verb = act] =
    /^(?:(.+) )?(added|changed|archived|restored|removed|ordered)$/.exec(act) ?? []
  const what = noun === '' ? '' : `${sayThing(noun)} `
  if (verb === 'changed')
    return noun === '' ? changeWords(told, facts) : `${sayThing(noun)}: ${changeWords(told, facts)}`
  const parts = Object.entries(told).flatMap(([field, value]) => {
    // A row taken out is kept as it was, and written like a change from nothing.
    const bare = verb === 'removed' && isPair(value) ? value[1] : value
    const words = valueWords(field, bare, facts)
    return words === null || words === nothing() ? [] : [`${fieldWords(field)} ${words}`]
  })
  const said = `${what}${verbs[verb] === undefined ? sayAct(verb) : say(verbs[verb])}`
  return parts.length === 0 ? said : `${said}: ${parts.join(', ')}`
}

/** What was taken back, or stands again, in the words it had. */
function againWords({ act, entity, entityId }: Line, { of }: Detail, known: Say): string {
  const before = (of ?? {}) as { act?: string; detail?: unknown }
  const what = before.act ? sayLine({ act: before.act, entity, entityId, detail: before.detail }, known) : ''
  return act === 'undone' ? say('taken back: “{what}”', { what }) : say('stands again: “{what}”', { what })
}

/** The unit of the product or bottle a line names, or else is about. */
function unitIn({ entityId }: Line, { productId, lotId }: Detail, { unitOf }: Say): Unit | undefined {
  const [id = entityId] = [productId, lotId].filter(each => typeof each === 'string')
  return unitOf(id)
}

function changeWords(detail: Detail, facts: OfLine): string {
  const changes = Object.entries(detail).map(([field, value]) => {
    const name = fieldWords(field)
    if (!isPair(value)) {
      const words = valueWords(field, value, facts)
      return words === null ? name : `${name} ${words}`
    }
    const [from, to] = value.map(each => valueWords(field, each, facts))
    return from === null || to === null
      ? say('the {name}', { name })
      : say('the {name} from {from} to {to}', { name, from, to })
  })
  return changes.length === 0
    ? say('saved without a change')
    : say('changed {changes}', { changes: listWords(changes) })
}

const isPair = (value: unknown): value is [unknown, unknown] => Array.isArray(value) && value.length === 2

/** "promisedAt" is "promised", "lifeAfterOpeningDays" "life after opening days". */
export function fieldWords(field: string): string {
  return sayField(
    called[field] ??
      field
        .replace(/(At|On|Id|Minor|Min|Centi)$/, '')
        .replaceAll(/([a-z\d])([A-Z])/g, (_, a: string, b: string) => `${a} ${b.toLowerCase()}`),
  )
}

const nothing = () => say('nothing||an empty field')

/** Fields that hold one of the app's own words, or a list of them; any other text is what somebody typed. */
const fixedWords =
  /^(sizeClass|finish|finishes|kind|family|scope|stage|skills?|panels?|condition|state|status|channel|moment)$/

/** A value in words; null where it is too much to say, or says nothing to anybody. */
function valueWords(field: string, value: unknown, facts: OfLine): string | null {
  if (field === 'seq' || field === 'position') return null
  if (value === null || value === undefined || value === '') return nothing()
  if (Array.isArray(value) && value.length === 0) return nothing()
  if (typeof value === 'boolean') return value ? say('yes') : say('no')
  if (typeof value === 'number') {
    if (field === 'at' || field.endsWith('At')) return facts.when(value)
    if (field.endsWith('Minor')) return facts.money(value)
    if (field.endsWith('Min')) return durationWords(value)
    if (!/centi$/i.test(field)) return decimalNow(value)
    return facts.unit === undefined ? decimalNow(value / 100) : amountWords(value, facts.unit)
  }
  if (typeof value === 'string') {
    if (/Ids?$/.test(field)) return facts.nameOf(value) ?? null
    return fixedWords.test(field) ? sayKept(value) : oneLine(value)
  }
  const words = Array.isArray(value) && value.every(each => typeof each === 'string')
  if (!words || /ids$/i.test(field)) return null
  return listWords(fixedWords.test(field) ? value.map(sayKept) : (value as string[]))
}

/** As much of a text as a line of a list has room for. */
function oneLine(text: string): string {
  const flat = text.replaceAll(/\s+/gu, ' ').trim()
  const letters = [...flat]
  return letters.length > 120 ? `${letters.slice(0, 119).join('')}…` : flat
}
