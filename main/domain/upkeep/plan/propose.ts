import { dateOfDay, dayNumber } from '../../calendar/index.ts'
import { say, word } from '../../language/index.ts'
import { refuse } from '../../refusal.ts'
import type { LearnedLife } from '../life/learn.ts'
import { conditionalAge, type Weibull } from '../life/weibull.ts'
import { dayRule } from '../recurrence/dayRule.ts'
import { type DueQuestion, nextDue } from './nextDue.ts'
import type { CarTimes, Plan, VisitRecord } from './plan.ts'
import { standingOf } from './standing.ts'
import { topperRule } from './startingPlans.ts'
import { dayNumberWords } from './words.ts'

/**
 * A change the desk may accept. Nothing in this library moves a due day by itself: what was learned becomes a
 * proposal with its reason, and only `acceptProposal` makes it so.
 */
export type ChangeProposal = {
  readonly planId: string
  /** The next due day as it stands and as it would be. */
  readonly fromOn: string
  readonly toOn: string
  /** What is proposed, and the rest of the reasons. */
  readonly sentence: string
  readonly why: readonly string[]
} & (
  | {
      readonly what: 'interval'
      readonly rule: string
      readonly days: number
      /** Where the new rule's day is past: that day, from which the visit moves to today. */
      readonly pastOn: string | null
    }
  | { readonly what: 'next-visit'; readonly ruleOn: string }
)

/** A plan with everything written down about it. */
export interface KeptPlan {
  readonly plan: Plan
  readonly records: readonly VisitRecord[]
  readonly car: CarTimes
}

/** A change smaller than both is noise, and not worth anybody's attention. */
export const WORTH_PROPOSING = { days: 7, share: 0.05 } as const

function percent(share: number): string {
  return `${Math.round(share * 100)} %`
}

/** What was learned, for one car, in two sentences: ages in the car's own days. */
export function learnedWords(learned: LearnedLife, multiplier: number): string[] {
  const days = (age: number) => Math.floor(age * multiplier)
  const { low, high } = learned.range
  const range =
    high === null
      ? say('{low} or more', { low: days(low) })
      : say('between {low} and {high}', { low: days(low), high: days(high) })
  return [
    say('{level} still work at {renewAge} days ({range} at {confidence} confidence).', {
      level: percent(learned.level),
      renewAge: days(learned.renewAge),
      range,
      confidence: percent(learned.confidence),
    }),
    learned.lives === 0
      ? say('No inspection has been read yet: this is the data sheet alone.')
      : say(
          'Read from {lives} {lives, plural, one {life} other {lives}}, {ended} seen to end; {priorWeight} of it still rests on the data sheet.',
          { lives: learned.lives, ended: learned.ended, priorWeight: percent(learned.priorWeight) },
        ),
  ]
}

/**
 * Proposes a topper's interval from a learned life, for a car whose exposure scales the reference age by
 * `multiplier`. Caution is not symmetrical: a shorter interval is proposed as soon as the middle of what was learned
 * says so, a longer one only as far as its cautious end still keeps the asked-for share. Null when the plan's interval is near
 * enough, or a longer one is not proven. Whole days, rounded down. Refuses plans that do not count from the last visit:
 * those go by their dates.
 */
export function proposeInterval(
  { plan, records, car }: KeptPlan,
  learned: LearnedLife,
  multiplier: number,
  question: DueQuestion,
): ChangeProposal | null {
  if (plan.anchor.to !== 'last-done')
    refuse(
      'plan-by-dates',
      { anchor: plan.anchor.to },
      say('A plan that goes by dates has no interval to learn; anchor it to the last visit done.'),
    )
  const before = daysOf(plan, records, question.zone)
  const now = nextDue(plan, records, car, question)
  if (before === null || now.dueOn === null) return null
  const days = provenDays(learned, multiplier, before)
  if (!worthProposing(days, before)) return null
  const rule = topperRule(days)
  const then = nextDue({ ...plan, rule }, records, car, question)
  if (then.dueOn === null) return null
  // A topper that should have been renewed already is to be renewed today.
  const isPast = then.dueOn < question.today
  const toOn = isPast ? question.today : then.dueOn
  return {
    planId: plan.id,
    what: 'interval',
    rule,
    days,
    pastOn: isPast ? then.ruleOn : null,
    fromOn: now.dueOn,
    toOn,
    sentence: intervalSentence({ days, before, fromOn: now.dueOn, toOn, today: question.today }),
    why: [...learnedWords(learned, multiplier), say(days > before ? longerWords : shorterWords)],
  }
}

const shorterWords = word('A shorter interval is proposed as soon as the middle of what was learned says so.')
const longerWords = word('A longer one is proposed only as far as nine chances in ten keep that share.')

/** The change in one sentence; a day that is past is not named. */
function intervalSentence(change: {
  days: number
  before: number
  fromOn: string
  toOn: string
  today: string
}): string {
  const { days, before, fromOn, toOn, today } = change
  const values = {
    days,
    before,
    fromOn: dayNumberWords(dayNumber(fromOn)),
    toOn: dayNumberWords(dayNumber(toOn)),
  }
  if (toOn > today && fromOn >= today)
    return say('Renew every {days} days instead of {before}: next on {toOn}, not {fromOn}.', values)
  if (toOn > today)
    return say('Renew every {days} days instead of {before}: next on {toOn}, not now.', values)
  return fromOn > today
    ? say('Renew every {days} days instead of {before}: due now, not on {fromOn}.', values)
    : say('Renew every {days} days instead of {before}: it is due either way.', values)
}

/** The days the plan's rule counts from the last visit to the next; null where none follows. */
function daysOf(plan: Plan, records: readonly VisitRecord[], zone: string): number | null {
  const { start } = standingOf(plan, records)
  const next = dayRule(plan.rule, zone).next(start, start)
  return next === null ? null : next - start
}

/** The whole days that are proven where `before` stand: fewer by the middle, more by the cautious end alone. */
function provenDays({ renewAge, cautiousAge }: LearnedLife, multiplier: number, before: number): number {
  const [middle, cautious] = [renewAge, cautiousAge].map(age => Math.max(1, Math.floor(age * multiplier)))
  return middle! < before ? middle! : Math.max(before, cautious!)
}

function worthProposing(days: number, before: number): boolean {
  const change = Math.abs(days - before)
  return change >= WORTH_PROPOSING.days && change >= WORTH_PROPOSING.share * before
}

/**
 * What is missing before a longer interval than the plan's is proposed, in a sentence; null where the middle of what was
 * learned asks for none, or the longer one is proven.
 */
export function missingWords(
  { plan, records }: KeptPlan,
  learned: LearnedLife,
  multiplier: number,
  zone: string,
): string | null {
  const before = daysOf(plan, records, zone)
  const middle = Math.floor(learned.renewAge * multiplier)
  if (before === null || middle <= before || !worthProposing(middle, before)) return null
  if (worthProposing(provenDays(learned, multiplier, before), before)) return null
  const { lives, ended } = learned
  return say(
    '{lives, plural, one {One life seen so far} other {{lives} lives seen so far}}, {ended, plural, =0 {none of them to its end} one {{ended} of them to its end} other {{ended} of them to their end}}: too few to renew later than after {before} days. More looks at cars near or past that age would tell.',
    { lives, ended, before },
  )
}

/** What the last look at a car's present topper found. */
export interface LastLook {
  /** The day the topper was laid, and the day it was looked at. */
  readonly laidOn: string
  readonly on: string
  readonly working: boolean
  /** Looked at once, before or without a wash. */
  readonly single?: boolean
}

/**
 * Proposes another day for a topper's next visit after a look at the car: today when it was found gone; when it still
 * works, the day its chance of working falls to the learned level, given that it worked when seen: an earlier day by the
 * middle of what was learned, a later one by its cautious end. Null when that is near enough to the day it has.
 */
export function proposeVisit(
  { plan, records, car }: KeptPlan,
  learned: LearnedLife,
  multiplier: number,
  look: LastLook,
  question: DueQuestion,
): ChangeProposal | null {
  const now = nextDue(plan, records, car, question)
  if (now.dueOn === null) return null
  const laid = dayNumber(look.laidOn, 'look.laidOn')
  const age = dayNumber(look.on, 'look.on') - laid
  if (age < 0)
    refuse(
      'look-too-early',
      { 'look.on': look.on },
      say('It was looked at on {on}, before it was laid.', { on: look.on }),
    )
  const today = dayNumber(question.today, 'today')
  const due = dayNumber(now.dueOn)
  const proposed = (to: number, sentence: string, why: string[] = []): ChangeProposal => ({
    planId: plan.id,
    what: 'next-visit',
    ruleOn: now.ruleOn,
    fromOn: now.dueOn,
    toOn: dateOfDay(to),
    sentence,
    why,
  })
  const values = { laid: dayNumberWords(laid + age), due: dayNumberWords(due) }
  if (!look.working)
    return due <= today
      ? null
      : proposed(
          today,
          look.single
            ? say(
                'A single look on {laid} found it gone, which may be dirt on it: wash, look again, and renew it if it is, now and not on {due}.',
                values,
              )
            : say('It was found gone on {laid}: renew it now, not on {due}.', values),
        )
  const dayBy = (life: Weibull) =>
    laid + Math.floor(conditionalAge(life, learned.level, age / multiplier) * multiplier)
  const middle = dayBy(learned.life)
  const until = middle < due ? middle : Math.max(due, dayBy(cautiousLife(learned)))
  const to = Math.max(today, until)
  // What is due already is not put off to today.
  if (Math.abs(to - due) < WORTH_PROPOSING.days || (due <= today && to === today)) return null
  const kept = { age, level: percent(learned.level), until: dayNumberWords(until) }
  const why = [
    until < today
      ? say(
          'It still worked {age} days after it was laid; of those that do, fewer than {level} still work today.',
          kept,
        )
      : say(
          'It still worked {age} days after it was laid; of those that do, {level} still work on {until}.',
          kept,
        ),
    ...(to > due ? [say(longerWords)] : []),
  ]
  const moved = { ...values, to: dayNumberWords(to) }
  if (to === today)
    return proposed(
      to,
      say('It still worked on {laid}, but is near its end: renew it now, not on {due}.', moved),
      why,
    )
  return proposed(
    to,
    due < today
      ? say('It still worked on {laid}: renewing it on {to} is soon enough.', moved)
      : say('It still worked on {laid}: renew it on {to}, not on {due}.', moved),
    why,
  )
}

/** The same curve through the cautious end of the age. */
function cautiousLife({ life, renewAge, cautiousAge }: LearnedLife): Weibull {
  return { ...life, scale: (life.scale * cautiousAge) / renewAge }
}

/** A plan and its records with a proposal made so. */
export function acceptProposal(
  plan: Plan,
  records: readonly VisitRecord[],
  proposal: ChangeProposal,
): { plan: Plan; records: readonly VisitRecord[] } {
  if (proposal.planId !== plan.id)
    refuse('proposal-other-plan', { planId: proposal.planId }, say('This proposal is for another plan.'))
  const moved = (dueOn: string) => [
    ...records,
    { what: 'moved' as const, dueOn, to: proposal.toOn, why: say('from the last inspection') },
  ]
  if (proposal.what === 'next-visit') return { plan, records: moved(proposal.ruleOn) }
  return {
    plan: { ...plan, rule: proposal.rule },
    records: proposal.pastOn === null ? records : moved(proposal.pastOn),
  }
}
