/*
 * How the shop writes times, days and weeks at this moment: as it chose under Settings, and where it chose nothing as is
 * usual in its country for the language of the moment. What is usual is Unicode's (CLDR), as Intl gives it.
 */
import { languageNow } from './languages.ts'
import { localeNow } from './locale.ts'
import { type ClockHours, type DateOrder, waysNow } from './ways.ts'

export interface Formats {
  readonly clockHours: ClockHours
  readonly dateOrder: DateOrder
  /** The first day of the week, 1 for Monday to 7 for Sunday. */
  readonly weekBegins: number
}

const usual = new Map<string, Formats>()

/** What is usual where this locale is spoken. */
export function usualFormats(locale: string): Formats {
  let formats = usual.get(locale)
  if (!formats) {
    formats = {
      clockHours: twelve(locale) ? 12 : 24,
      dateOrder: dateOrderOf(locale),
      weekBegins: weekBeginsIn(locale),
    }
    usual.set(locale, formats)
  }
  return formats
}

function twelve(locale: string): boolean {
  const { hourCycle } = new Intl.DateTimeFormat(locale, { hour: 'numeric' }).resolvedOptions()
  return hourCycle === 'h12' || hourCycle === 'h11'
}

function dateOrderOf(locale: string): DateOrder {
  const parts = new Intl.DateTimeFormat(locale, { day: 'numeric', month: 'long' }).formatToParts(0)
  const at = (type: string) => parts.findIndex(part => part.type === type)
  return at('month') < at('day') ? 'monthFirst' : 'dayFirst'
}

/** Some browsers do not say where a week begins; in most countries it is Monday, as ISO 8601 has it. */
function weekBeginsIn(locale: string): number {
  const asked: { getWeekInfo?(): { firstDay: number } } = new Intl.Locale(locale)
  return asked.getWeekInfo?.().firstDay ?? 1
}

export function clockHoursNow(): ClockHours {
  return waysNow()?.clockHours ?? usualFormats(localeNow()).clockHours
}

/** German words always put the day first; what is typed as figures follows the shop in every language. */
export function dateOrderNow(): DateOrder {
  return waysNow()?.dateOrder ?? usualFormats(localeNow()).dateOrder
}

export function weekBeginsNow(): number {
  return waysNow()?.weekBegins ?? usualFormats(localeNow()).weekBegins
}

/** The weekdays, 1 for Monday to 7 for Sunday, from the first of the shop's week on. */
export function weekdaysNow(): number[] {
  const first = weekBeginsNow()
  return Array.from({ length: 7 }, (_, i) => ((first - 1 + i) % 7) + 1)
}

/** Language and country for dates in words, where Intl makes them: English as the shop orders day and month. */
export function dateLocaleNow(): string {
  if (languageNow() !== 'en') return localeNow()
  return dateOrderNow() === 'monthFirst' ? 'en-US' : 'en-GB'
}

/**
 * The locale and clock of a letter in any language, "fr" or "de-AT": as the shop writes times, and English as it orders
 * day and month. Where no shop is known, as is usual for the language.
 */
export function writtenIn(tag: string): { locale: string; hourCycle?: 'h12' | 'h23' } {
  const ways = waysNow()
  if (!ways) return { locale: tag }
  const { language, region } = new Intl.Locale(tag)
  const locale = region || !ways.country ? tag : `${language}-${ways.country}`
  const hours = ways.clockHours ?? usualFormats(locale).clockHours
  const order = language === 'en' && ways.dateOrder
  return {
    locale: order ? (order === 'monthFirst' ? 'en-US' : 'en-GB') : locale,
    hourCycle: hours === 12 ? 'h12' : 'h23',
  }
}
