import { say } from '../language/index.ts'
import type { BindingCode, Reason, ViolationCode } from './reasons.ts'

/** How the shop writes minutes and names; supplied from above, where its zone and its words are known. */
export interface Words {
  /** A minute as the desk says it: 'Tuesday 03:20'. */
  minute(at: number): string
  /** A duration: '1 h 30 min'. */
  duration(minutes: number): string
  bay(id: string): string
  person(id: string): string
  skill(skill: string): string
  capability(capability: string): string
  /** A step of the job by its place in the chain, from 0: 'second layer'. */
  step(index: number): string
  /** Whose job a booked stay is. */
  job(id: string): string
}

type Text = (reason: Reason, words: Words) => string

const at = (words: Words, minute: number | undefined) => (minute === undefined ? '?' : words.minute(minute))
const span = (words: Words, minutes: number | undefined) => words.duration(minutes ?? 0)
const step = (words: Words, reason: Reason) =>
  reason.step === undefined ? say('the car') : words.step(reason.step)
const bay = (words: Words, reason: Reason) => words.bay(reason.bay ?? '?')
const person = (words: Words, reason: Reason) => words.person(reason.person ?? '?')
const people = (count: number | undefined) =>
  say('{count, plural, one {one person} other {{count} people}}', { count: count ?? 0 })

const texts: Record<ViolationCode | BindingCode, Text> = {
  stepCount: reason =>
    say('the plan has {limit} steps, the job {minutes}', { limit: reason.limit, minutes: reason.minutes }),
  offGrid: (reason, words) =>
    say('{words} is off the {limit} min booking grid', {
      words: at(words, reason.from),
      limit: reason.limit,
    }),
  beforeRelease: (reason, words) =>
    say('the job may not start before {words}', { words: at(words, reason.limit) }),
  beyondHorizon: (reason, words) =>
    say('nothing is planned after {words}', { words: at(words, reason.limit) }),
  wrongEnd: (reason, words) =>
    say('{words} takes {words2} and so ends {words3}, not {words4}', {
      words: step(words, reason),
      words2: span(words, reason.minutes),
      words3: at(words, reason.limit),
      words4: at(words, reason.to),
    }),
  closedHours: (reason, words) =>
    say('{words} needs {words2} of opening hours from {words3}', {
      words: step(words, reason),
      words2: span(words, reason.minutes),
      words3: at(words, reason.from),
    }),
  doorsClosed: (reason, words) =>
    say('the shop is closed {words}: no car comes, moves or goes then', { words: at(words, reason.from) }),
  waitTooShort: (reason, words) =>
    say('{words} may start only {words2} after the step before, which ends {words3}', {
      words: step(words, reason),
      words2: span(words, reason.minutes),
      words3: at(words, reason.from),
    }),
  waitTooLong: (reason, words) =>
    say('{words} must start within {words2} of the step before, which ends {words3}', {
      words: step(words, reason),
      words2: span(words, reason.minutes),
      words3: at(words, reason.from),
    }),
  unknownBay: (reason, words) => say('there is no bay {words}', { words: bay(words, reason) }),
  unfitBay: (reason, words) =>
    reason.capability === undefined
      ? say('{words} is not meant for {words2}', { words: step(words, reason), words2: bay(words, reason) })
      : say('{words} is not equipped for {capability}, which {words2} needs', {
          words: bay(words, reason),
          capability: words.capability(reason.capability),
          words2: step(words, reason),
        }),
  leftBay: (reason, words) =>
    say('{words} must stay in {words2}', { words: step(words, reason), words2: bay(words, reason) }),
  bayTaken: (reason, words) =>
    reason.other === undefined
      ? say('{words} is taken until {words2}', { words: bay(words, reason), words2: at(words, reason.to) })
      : say('{words} is taken until {words2} by {other}', {
          words: bay(words, reason),
          words2: at(words, reason.to),
          other: words.job(reason.other),
        }),
  bayClosed: (reason, words) =>
    say('{words} is closed from {words2} until {words3}', {
      words: bay(words, reason),
      words2: at(words, reason.from),
      words3: at(words, reason.to),
    }),
  outsidePin: (reason, words) =>
    reason.from === reason.to
      ? say('{words} is pinned to {words2}', { words: step(words, reason), words2: at(words, reason.from) })
      : say('{words} must start between {words2} and {words3}', {
          words: step(words, reason),
          words2: at(words, reason.from),
          words3: at(words, reason.to),
        }),
  movedInHold: (reason, words) =>
    reason.minutes === undefined
      ? say('the car may not be moved during {words}', { words: step(words, reason) })
      : say('the car may be moved once, {words} into {words2}, to another bay', {
          words: span(words, reason.minutes),
          words2: step(words, reason),
        }),
  crewSize: (reason, words) =>
    reason.skill === undefined
      ? say('{words} takes {minutes}, not {limit}', {
          words: step(words, reason),
          minutes: people(reason.minutes),
          limit: reason.limit,
        })
      : say('{words} takes {minutes} for {skill}, not {limit}', {
          words: step(words, reason),
          minutes: people(reason.minutes),
          skill: words.skill(reason.skill),
          limit: reason.limit,
        }),
  unknownPerson: (reason, words) => say('there is no {words} in the crew', { words: person(words, reason) }),
  unskilled: (reason, words) =>
    say('{words} does not have the skill {skill}', {
      words: person(words, reason),
      skill: words.skill(reason.skill ?? '?'),
    }),
  personAway: (reason, words) =>
    say('{words} is not free from {words2} until {words3}', {
      words: person(words, reason),
      words2: at(words, reason.from),
      words3: at(words, reason.to),
    }),
  personTwice: (reason, words) =>
    say('{words} is named twice for {words2}', { words: person(words, reason), words2: step(words, reason) }),
  earlyHandover: (reason, words) =>
    say('the last step ends {words}, after the handover {words2}', {
      words: at(words, reason.to),
      words2: at(words, reason.from),
    }),
  crewBusy: (reason, words) =>
    say(
      '{minutes, plural, one {nobody} other {no team of {minutes}}} with the skill {skill} is free for {words} before {words2}',
      {
        minutes: reason.minutes,
        skill: words.skill(reason.skill ?? '?'),
        words: step(words, reason),
        words2: at(words, reason.to),
      },
    ),
  cure: (reason, words) =>
    reason.to === undefined
      ? say('{words} runs until {words2}', { words: step(words, reason), words2: at(words, reason.from) })
      : say('{words} runs until {words2}; the shop opens {words3}', {
          words: step(words, reason),
          words2: at(words, reason.from),
          words3: at(words, reason.to),
        }),
  holdsDoor: (reason, words) =>
    say('{words} ends {words2}; the shop opens {words3}', {
      words: step(words, reason),
      words2: at(words, reason.from),
      words3: at(words, reason.to),
    }),
  shopClosed: (reason, words) =>
    say('the shop is closed from {words} until {words2}', {
      words: at(words, reason.from),
      words2: at(words, reason.to),
    }),
  recoatWait: (reason, words) =>
    say('{words} may start only {words2} after the step before it: {words3}', {
      words: step(words, reason),
      words2: span(words, reason.minutes),
      words3: at(words, reason.to),
    }),
  recoatLimit: (reason, words) =>
    say('{words} must start within {words2} of the step before it', {
      words: step(words, reason),
      words2: span(words, reason.minutes),
    }),
  pinned: (reason, words) =>
    say('{words} is kept to {words2}', { words: step(words, reason), words2: at(words, reason.from) }),
  noBay: (reason, words) =>
    reason.capability === undefined
      ? say('no bay is allowed, which {words} needs', { words: step(words, reason) })
      : say('no bay is equipped for {capability}, which {words} needs', {
          capability: words.capability(reason.capability),
          words: step(words, reason),
        }),
  noSkill: (reason, words) =>
    say('{words} takes {minutes} with the skill {skill}; the crew has {limit}', {
      words: step(words, reason),
      minutes: people(reason.minutes),
      skill: words.skill(reason.skill ?? '?'),
      limit: reason.limit,
    }),
  tooLong: (reason, words) =>
    say('{words} takes {words2} unbroken; the longest opening has {words3}', {
      words: step(words, reason),
      words2: span(words, reason.minutes),
      words3: span(words, reason.limit),
    }),
  onlyBay: (reason, words) =>
    say('{words} must stay in the bay of the step before', { words: step(words, reason) }),
  horizon: (reason, words) =>
    say('the plan ends {words}; the job would go on after it', { words: at(words, reason.to) }),
  workItself: (reason, words) => say('the work itself lasts until {words}', { words: at(words, reason.to) }),
}

/** One reason in a plain sentence without a full stop, with the shop's own names and times. */
export function reasonText(reason: Reason, words: Words): string {
  return texts[reason.code](reason, words)
}
