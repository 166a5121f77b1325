import { say } from '../language/index.ts'
import { refuse } from '../refusal.ts'

/**
 * ISO 4217 list one: code and numeric code, by the number of digits after the decimal sign. Read from the public table
 * `data/codes-all.csv` of the repository datasets/currency-codes. Codes that are no money (metals, test codes, units of
 * account) have no minor unit and stand apart. Display habits of a locale (no öre shown, say) are not the standard's.
 */
const byDigits: readonly [digits: number | null, list: string][] = [
  [
    0,
    'BIF108 CLP152 DJF262 GNF324 ISK352 JPY392 KMF174 KRW410 PYG600 RWF646 UGX800 UYI940 VND704 VUV548 XAF950 ' +
      'XOF952 XPF953',
  ],
  [
    2,
    'AED784 AFN971 ALL008 AMD051 AOA973 ARS032 AUD036 AWG533 AZN944 BAM977 BBD052 BDT050 BGN975 BMD060 BND096 ' +
      'BOB068 BOV984 BRL986 BSD044 BTN064 BWP072 BYN933 BZD084 CAD124 CDF976 CHE947 CHF756 CHW948 CNY156 COP170 ' +
      'COU970 CRC188 CUP192 CVE132 CZK203 DKK208 DOP214 DZD012 EGP818 ERN232 ETB230 EUR978 FJD242 FKP238 GBP826 ' +
      'GEL981 GHS936 GIP292 GMD270 GTQ320 GYD328 HKD344 HNL340 HTG332 HUF348 IDR360 ILS376 INR356 IRR364 JMD388 ' +
      'KES404 KGS417 KHR116 KPW408 KYD136 KZT398 LAK418 LBP422 LKR144 LRD430 LSL426 MAD504 MDL498 MGA969 MKD807 ' +
      'MMK104 MNT496 MOP446 MRU929 MUR480 MVR462 MWK454 MXN484 MXV979 MYR458 MZN943 NAD516 NGN566 NIO558 NOK578 ' +
      'NPR524 NZD554 PAB590 PEN604 PGK598 PHP608 PKR586 PLN985 QAR634 RON946 RSD941 RUB643 SAR682 SBD090 SCR690 ' +
      'SDG938 SEK752 SGD702 SHP654 SLE925 SOS706 SRD968 SSP728 STN930 SVC222 SYP760 SZL748 THB764 TJS972 TMT934 ' +
      'TOP776 TRY949 TTD780 TWD901 TZS834 UAH980 USD840 USN997 UYU858 UZS860 VED926 VES928 WST882 XCD951 XCG532 ' +
      'YER886 ZAR710 ZMW967 ZWG924',
  ],
  [3, 'BHD048 IQD368 JOD400 KWD414 LYD434 OMR512 TND788'],
  [4, 'CLF990 UYW927'],
  [null, 'XAG961 XAU959 XBA955 XBB956 XBC957 XBD958 XDR960 XPD964 XPT962 XSU994 XTS963 XUA965 XXX999'],
]

export interface Currency {
  readonly code: string
  /** Three digits, leading zeros kept. */
  readonly numericCode: string
  /** Digits after the decimal sign; null for a code that is no money. */
  readonly minorUnits: number | null
}

const currencies: ReadonlyMap<string, Currency> = new Map(
  byDigits.flatMap(([minorUnits, list]) =>
    list.split(' ').map(entry => {
      const code = entry.slice(0, 3)
      return [code, { code, numericCode: entry.slice(3), minorUnits }] as const
    }),
  ),
)

/**
 * The ISO 4217 entry of a code. Refuses a code the standard does not list.
 * Source: ISO 4217, list one.
 */
export function currencyNamed(code: string, field = 'currency'): Currency {
  const currency = currencies.get(code)
  if (!currency)
    refuse(
      'currency-unknown',
      { [field]: code },
      say('"{code}" is not a currency code; use the three capital letters of ISO 4217, such as USD or EUR.', {
        code,
      }),
    )
  return currency
}

/** Digits after the decimal sign of a currency one can pay with. Refuses unknown codes and codes that are no money. */
export function minorUnitsOf(code: string, field = 'currency'): number {
  const { minorUnits } = currencyNamed(code, field)
  if (minorUnits === null)
    refuse(
      'currency-no-money',
      { [field]: code },
      say(
        '"{code}" is a code for metals, tests or accounts, not money; choose a currency a customer can pay with.',
        { code },
      ),
    )
  return minorUnits
}

/** The codes of all currencies with a minor unit, in alphabetical order, for a list to choose from. */
export function payableCurrencies(): string[] {
  return [...currencies.values()]
    .filter(currency => currency.minorUnits !== null)
    .map(currency => currency.code)
    .sort()
}
