import type { PlanKind } from '../../plan/plan.ts'
import type { Channel } from '../consent.ts'
import type { Template, TemplateWords } from '../template.ts'
import { german } from './de.ts'
import { english } from './en.ts'
import { spanish } from './es.ts'

const LANGUAGES: Readonly<Record<string, Readonly<Record<Channel, TemplateWords>>>> = {
  en: english,
  de: german,
  es: spanish,
}

/** What the visits of the starting plans are called to an owner, by language; the shop's own go by their titles. */
export const VISIT_NAMES: Readonly<Record<string, Readonly<Record<Exclude<PlanKind, 'other'>, string>>>> = {
  en: {
    'first-wash': 'first wash',
    'check-up': 'check-up',
    topper: 'protection renewal',
    inspection: 'yearly inspection',
  },
  de: {
    'first-wash': 'Erstwäsche',
    'check-up': 'Nachkontrolle',
    topper: 'Auffrischung des Schutzes',
    inspection: 'Jahresdurchsicht',
  },
  es: {
    'first-wash': 'primer lavado',
    'check-up': 'revisión',
    topper: 'renovación de la protección',
    inspection: 'inspección anual',
  },
}

/** One template a channel to start with, in every language there is. */
export function startingTemplates(): Template[] {
  return (['email', 'letter', 'text', 'call'] as const).map(channel => ({
    id: `reminder-${channel}`,
    channel,
    words: Object.fromEntries(Object.entries(LANGUAGES).map(([language, all]) => [language, all[channel]])),
  }))
}
