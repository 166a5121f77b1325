import {
  getCountries,
  getCountryCallingCode,
  isSupportedCountry,
  parsePhoneNumberFromString,
} from 'libphonenumber-js'
import { say } from '../language/index.ts'
import { refuse } from '../refusal.ts'

export interface Phone {
  /** What is stored: "+12125550123". */
  readonly e164: string
  /** Digits to ask for after the call is answered; null when there are none. */
  readonly extension: string | null
  /**
   * Whether the number lies in a range its country is known to have given out. False is a reason to ask again, not to
   * refuse: ranges open every month, and ranges kept for fiction are never given out.
   */
  readonly assigned: boolean
}

/**
 * A phone number as somebody typed it, read in the shop's region unless it carries a country code; null when it is none
 * (no digits, too short or too long for its country, more than 15 digits). The region is an ISO 3166 code such as "US".
 * Source: ITU-T E.164; national lengths from libphonenumber.
 */
export function parsePhone(text: string, region: string): Phone | null {
  const number = parsePhoneNumberFromString(text, { defaultCountry: checkCountry(region), extract: false })
  if (!number?.isPossible()) return null
  return { e164: number.number, extension: number.ext ?? null, assigned: number.isValid() }
}

/** The same, refused with the field named where the text is no phone number. */
export function readPhone(text: string, region: string, field = 'phone'): Phone {
  const phone = parsePhone(text, region)
  if (!phone)
    refuse(
      'phone-bad',
      { [field]: text },
      say(
        '"{text}" is not a phone number; type it with its area code, or with + and the country code for another country.',
        { text },
      ),
    )
  return phone
}

/** A stored number as people of the region write it: nationally at home, internationally for any other country. */
export function showPhone(e164: string, region: string): string {
  const number = parsePhoneNumberFromString(e164)
  if (!number) return e164
  const home = number.countryCallingCode === getCountryCallingCode(checkCountry(region))
  return home ? number.formatNational() : number.formatInternational()
}

/** The country of an ISO 3166 code; refused where phone numbers know none of that code. */
export function checkCountry(region: string, field = 'region') {
  if (!isSupportedCountry(region))
    refuse(
      'region-unknown',
      { [field]: region },
      say('"{region}" is not a country code; use one such as US or GB.', { region }),
    )
  return region
}

/** The ISO 3166 codes of all countries whose phone numbers are known, in alphabetical order, for a list to choose from. */
export function phoneCountries(): string[] {
  return [...getCountries()].sort()
}

/** A pattern that finds a stored number however its digits are set apart, with its country code or a trunk zero or without. */
export function phonePattern(e164: string): string {
  const number = parsePhoneNumberFromString(e164)
  const apart = '[\\s().\\-/]*'
  const digits = (text: string) => [...text].join(apart)
  if (!number) return digits(e164.replaceAll(/\D/g, ''))
  return `(?:\\+?${digits(number.countryCallingCode)}${apart})?0?${apart}${digits(number.nationalNumber)}`
}
