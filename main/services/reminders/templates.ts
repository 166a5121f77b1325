/** The words reminders are written in: those the program brings, until the shop saves its own. */
import { say, word } from '../../domain/language/index.ts'
import { refuse } from '../../domain/refusal.ts'
import { checkText } from '../../domain/shop/index.ts'
import {
  type Channel,
  checkTemplate,
  fill,
  LAW_NOTE,
  languageFor,
  MERGE_FIELDS,
  type MergeField,
  startingTemplates,
  type TemplateWords,
} from '../../domain/upkeep/index.ts'
import { fromJson } from '../../store/json.ts'
import type { Tx } from '../../store/store.ts'
import { act, type Desk } from '../desk/desk.ts'
import { saveSingle } from '../desk/keep.ts'
import { keptPlans } from '../upkeep/kept.ts'
import { checkLanguage, upkeepRules } from '../upkeep/settings.ts'
import { upkeepDay } from '../upkeep/visits.ts'
import { nextOf } from '../upkeep/workedOut.ts'
import type { PreviewInput, TemplateInput } from './inputs.ts'
import { exampleTimes, mergeFor } from './mergeFor.ts'
import { heldUntil } from './proposedTimes.ts'

export interface TemplateView {
  id: string
  name: string
  channel: Channel
  words: TemplateInput['words']
  /** 0: as the program brings it, not yet saved by the shop. */
  version: number
}

const startingNames: Record<Channel, string> = {
  email: word('Reminder by e-mail'),
  letter: word('Reminder by letter'),
  text: word('Reminder by text'),
  call: word('Script for a call'),
}

/** Every template in use, the shop's own words before those the program brings. */
export async function templatesOf(tx: Tx): Promise<TemplateView[]> {
  const rows = await tx.template.findMany({ orderBy: { id: 'asc' } })
  const own = new Map(rows.map(row => [row.id, row]))
  const brought = startingTemplates()
    .filter(({ id }) => !own.has(id))
    .map(({ id, channel, words }) => ({
      id,
      channel,
      name: say(startingNames[channel]),
      words: { ...words },
      version: 0,
    }))
  const kept = rows
    .filter(row => row.archivedAt === null)
    .map(({ id, name, channel, words, version }) => ({
      id,
      name,
      channel: channel as Channel,
      words: fromJson<TemplateView['words']>(words),
      version,
    }))
  return [...brought, ...kept]
}

/** A template's words in the language wanted, or in the nearest it is written in. */
export function wordsIn(
  template: TemplateView,
  wanted: string,
  usual: string,
): { language: string; words: TemplateWords } {
  const language = languageFor(Object.keys(template.words), wanted, usual)
  const words = template.words[language]
  if (!words)
    refuse(
      'missing',
      { words: language },
      say('"{name}" has no words yet; write some first.', { name: template.name }),
    )
  return { language, words }
}

export type TemplatesView = Awaited<ReturnType<typeof listTemplates>>

/** The templates with the fields they may hold, and the note on local law that stands on each. */
export async function listTemplates(desk: Desk) {
  return {
    templates: await templatesOf(desk.store.read),
    fields: Object.entries(MERGE_FIELDS).map(([name, meaning]) => ({
      name: name as MergeField,
      meaning: say(meaning),
    })),
    lawNote: say(LAW_NOTE),
  }
}

/** Saves a template's words; without an id a new one. */
export function saveTemplate(desk: Desk, input: TemplateInput): Promise<{ id: string }> {
  const id = input.id ?? crypto.randomUUID()
  const { channel, words, version } = input
  checkTemplate({ id, channel, words })
  const data = {
    name: checkText(input.name, 'name', say("The template's name"), 80),
    channel,
    words,
  }
  return act(desk, async (tx, audit) => {
    const before = (await templatesOf(tx)).find(each => each.id === id)
    if (before && before.channel !== channel)
      refuse('channel-fixed', { channel }, say('A template keeps its channel; add another one.'))
    await saveSingle(audit, { table: tx.template, entity: 'template' }, { key: { id }, version }, data)
    return { id }
  })
}

/** The words with a real car's values in; times stand in until a message really holds some. */
export async function previewTemplate(desk: Desk, input: PreviewInput) {
  const tx = desk.store.read
  const day = await upkeepDay(tx, desk.now())
  const rules = await upkeepRules(tx)
  const asked = input.language === undefined ? null : checkLanguage(input.language)
  const template = (await templatesOf(tx)).find(each => each.id === input.templateId)
  const vehicle = await tx.vehicle.findUnique({
    where: { id: input.vehicleId },
    include: { customer: { include: { reach: true } } },
  })
  if (!vehicle)
    refuse('missing', { vehicleId: input.vehicleId }, say('This car is not on file; look it up again.'))
  const wanted = asked ?? vehicle.customer.reach?.language ?? rules.language
  const own = template && wordsIn(template, wanted, rules.language)
  const words = input.words ?? own?.words
  if (!words)
    refuse('missing', { templateId: input.templateId }, say('There is no such template; choose another.'))
  const language = own?.language ?? wanted
  const [open] = (await keptPlans(tx, { vehicleId: vehicle.id }))
    .flatMap(kept => {
      const { kind, title } = kept.plan
      const { dueOn } = nextOf(kept, day)
      return dueOn === null ? [] : [{ kind, title, dueOn }]
    })
    .sort((a, b) => a.dueOn.localeCompare(b.dueOn))
  const { kind, title, dueOn } = open ?? { kind: 'topper', title: say('topper renewal'), dueOn: day.today }
  const slots = exampleTimes(dueOn, await heldUntil(tx, rules, day.nowAt), day.zone)
  const values = await mergeFor(tx, rules, { vehicle, kind, title, dueOn, slots, language })
  // The times are found and held when the message is written; until then an example stands there.
  const examples: MergeField[] = ['slotOne', 'slotTwo', 'heldUntil']
  return { language, ...fill(words, values), examples, lawNote: say(LAW_NOTE) }
}
