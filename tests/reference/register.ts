/**
 * Who holds which check values against the code. Every case of every file in this folder falls under exactly one row, and
 * each row says how many it takes, so that a value can neither be passed over nor lost.
 */
export interface Row {
  /** A file of this folder. */
  readonly file: string
  /** Found in a case's kind (second set) or at the start of its id (first set). */
  readonly cases: RegExp
  readonly count: number
  /** The test that asserts them, or why none does. */
  readonly by: string | { readonly notYet: string }
}

const later = {
  letters: 'The mail package writes the letter; tests/outbox/mail.test.ts reads whole letters back from a server.',
  calendar: 'Calendar files are only written here; tests/outbox/calendarFile.test.ts has them read back by another program.',
  lifting: 'No screen weighs what somebody lifts, so nothing computes it.',
  transport: 'The class and packing group of a UN number are read off the data sheet; no list of them is kept.',
  textbook: 'The order policy searches all sizes and counts real days where these are formulas for normal demand; no screen shows them.',
  weeks: 'The larger weeks take longer than a test may; `npm run bench -- plan` lays them and prints what it reached.',
  shops: 'Proving the larger job shops takes longer than a test may; `npm run bench -- plan` solves them and prints the gaps.',
  unsubscribing: 'The address an owner clicks belongs to the shop and is answered elsewhere; here only the header is written.',
}

const statistics = 'tests/domain/measure/statistics.test.ts'
const stock = 'tests/domain/shelf/reference.test.ts'
const hazard = 'tests/domain/hazard/reference.test.ts'
const phone = 'tests/domain/vehicle/phone.test.ts'
const mailAddress = 'tests/domain/vehicle/mailAddress.test.ts'
const calendarFile = 'tests/outbox/calendarFile.test.ts'
const reminders = 'tests/domain/upkeep/reminders/reference.test.ts'
const tables = 'tests/services/leaving/tables.test.ts'
const whole = (file: string, count: number, by: string): Row => ({ file, cases: /^/, count, by })
const both = (topic: string, first: number, second: number, by: string): Row[] => [
  whole(`${topic}.json`, first, by),
  whole(`sourced/${topic}.json`, second, by),
]

export const register: readonly Row[] = [
  ...both('calendar', 29, 37, 'tests/domain/calendar/reference.test.ts'),
  ...both('dewpoint', 18, 37, 'tests/domain/cure/dewPoint.test.ts'),
  whole('hazard.json', 40, hazard),
  ...both('maturity', 17, 25, 'tests/domain/cure/rate.test.ts'),
  ...both('money', 26, 55, 'tests/domain/money/reference.test.ts'),
  ...both('recurrence', 33, 52, 'tests/domain/upkeep/recurrence/reference.test.ts'),
  ...both('units', 18, 37, 'tests/domain/measure/units.test.ts'),
  ...both('vin', 23, 52, 'tests/domain/vehicle/vin.test.ts'),
  whole('monotoneCurve.json', 5, 'tests/domain/cure/monotoneCurve.test.ts'),
  whole('survival.json', 12, 'tests/domain/upkeep/life/reference.test.ts'),
  whole('scheduling/promise.json', 11, 'tests/domain/schedule/promise.test.ts'),
  whole('scheduling/small.json', 12, 'tests/domain/schedule/plan/layFloor.test.ts'),
  { file: 'scheduling/medium.json', cases: /^m0[13]$/, count: 2, by: 'tests/domain/schedule/plan/layFloor.test.ts' },
  { file: 'scheduling/medium.json', cases: /^m0[2456]$/, count: 4, by: { notYet: later.weeks } },
  { file: 'scheduling/instances.json', cases: /^ft06$/, count: 1, by: 'tests/domain/schedule/plan/classic.test.ts' },
  { file: 'scheduling/instances.json', cases: /^(ft10|la)/, count: 6, by: { notYet: later.shops } },
  { file: 'scheduling/optima.json', cases: /^ft06$/, count: 1, by: 'tests/domain/schedule/plan/classic.test.ts' },
  { file: 'scheduling/optima.json', cases: /^(ft10|la)/, count: 6, by: { notYet: later.shops } },

  { file: 'sourced/hazard.json', cases: /^(?!lifting|un-number)/, count: 62, by: hazard },
  { file: 'sourced/hazard.json', cases: /^lifting/, count: 14, by: { notYet: later.lifting } },
  { file: 'sourced/hazard.json', cases: /^un-number$/, count: 5, by: { notYet: later.transport } },

  { file: 'stock.json', cases: /^(?!eoq-breaks)/, count: 41, by: stock },
  { file: 'stock.json', cases: /^eoq-breaks/, count: 3, by: { notYet: later.textbook } },
  { file: 'sourced/stock.json', cases: /^(?!eoq-breaks|fill-rate|newsvendor-normal|lower-of-cost|round-up)/, count: 34, by: stock },
  { file: 'sourced/stock.json', cases: /^(eoq-breaks|fill-rate|newsvendor-normal|lower-of-cost|round-up)/, count: 9, by: { notYet: later.textbook } },

  { file: 'communications.json', cases: /^phone-/, count: 10, by: phone },
  { file: 'communications.json', cases: /^mail-/, count: 9, by: mailAddress },
  { file: 'communications.json', cases: /^(fold|escape)-/, count: 6, by: calendarFile },
  { file: 'communications.json', cases: /^mailto-/, count: 1, by: reminders },
  { file: 'communications.json', cases: /^(csv|formula)-/, count: 10, by: tables },
  { file: 'sourced/communications.json', cases: /^phone$/, count: 12, by: phone },
  { file: 'sourced/communications.json', cases: /^address$/, count: 18, by: mailAddress },
  { file: 'sourced/communications.json', cases: /^(fold|text-escape)$/, count: 10, by: calendarFile },
  {
    file: 'sourced/communications.json',
    cases: /^(list-unsubscribe|send-window)$/,
    count: 5,
    by: reminders,
  },
  { file: 'sourced/communications.json', cases: /^csv-/, count: 8, by: tables },
  {
    file: 'sourced/communications.json',
    cases: /^(encoded-word|smtp-transparency)$/,
    count: 8,
    by: { notYet: later.letters },
  },
  {
    file: 'sourced/communications.json',
    cases: /^(unfold|text-unescape|date-time-form)$/,
    count: 5,
    by: { notYet: later.calendar },
  },
  {
    file: 'sourced/communications.json',
    cases: /^one-click-re/,
    count: 5,
    by: { notYet: later.unsubscribing },
  },

  { file: 'statistics.json', cases: /^wilson-/, count: 3, by: 'tests/domain/upkeep/results/wilson.test.ts' },
  { file: 'statistics.json', cases: /^(?!wilson-)/, count: 12, by: statistics },
  whole('sourced/statistics.json', 18, statistics),
  ...both('gloss', 12, 23, 'tests/domain/measure/gloss.test.ts'),
]
