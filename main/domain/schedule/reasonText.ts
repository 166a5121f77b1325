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
  reason.step === undefined ? 'the car' : words.step(reason.step)
const bay = (words: Words, reason: Reason) => words.bay(reason.bay ?? '?')
const person = (words: Words, reason: Reason) => words.person(reason.person ?? '?')
const people = (count: number | undefined) => (count === 1 ? 'one person' : `${count ?? 0} people`)

const texts: Record<ViolationCode | BindingCode, Text> = {
  stepCount: reason => `the plan has ${reason.limit} steps, the job ${reason.minutes}`,
  offGrid: (reason, words) => `${at(words, reason.from)} is off the ${reason.limit} min booking grid`,
  beforeRelease: (reason, words) => `the job may not start before ${at(words, reason.limit)}`,
  beyondHorizon: (reason, words) => `nothing is planned after ${at(words, reason.limit)}`,
  wrongEnd: (reason, words) =>
    `${step(words, reason)} takes ${span(words, reason.minutes)} and so ends ${at(words, reason.limit)}, not ${at(words, reason.to)}`,
  closedHours: (reason, words) =>
    `${step(words, reason)} needs ${span(words, reason.minutes)} of opening hours from ${at(words, reason.from)}`,
  doorsClosed: (reason, words) =>
    `the shop is closed ${at(words, reason.from)}: no car comes, moves or goes then`,
  waitTooShort: (reason, words) =>
    `${step(words, reason)} may start only ${span(words, reason.minutes)} after the step before, which ends ${at(words, reason.from)}`,
  waitTooLong: (reason, words) =>
    `${step(words, reason)} must start within ${span(words, reason.minutes)} of the step before, which ends ${at(words, reason.from)}`,
  unknownBay: (reason, words) => `there is no bay ${bay(words, reason)}`,
  unfitBay: (reason, words) =>
    reason.capability === undefined
      ? `${step(words, reason)} is not meant for ${bay(words, reason)}`
      : `${bay(words, reason)} is not equipped for ${words.capability(reason.capability)}, which ${step(words, reason)} needs`,
  leftBay: (reason, words) => `${step(words, reason)} must stay in ${bay(words, reason)}`,
  bayTaken: (reason, words) =>
    `${bay(words, reason)} is taken until ${at(words, reason.to)}${
      reason.other === undefined ? '' : ` by ${words.job(reason.other)}`
    }`,
  bayClosed: (reason, words) =>
    `${bay(words, reason)} is closed from ${at(words, reason.from)} until ${at(words, reason.to)}`,
  outsidePin: (reason, words) =>
    reason.from === reason.to
      ? `${step(words, reason)} is pinned to ${at(words, reason.from)}`
      : `${step(words, reason)} must start between ${at(words, reason.from)} and ${at(words, reason.to)}`,
  movedInHold: (reason, words) =>
    reason.minutes === undefined
      ? `the car may not be moved during ${step(words, reason)}`
      : `the car may be moved once, ${span(words, reason.minutes)} into ${step(words, reason)}, to another bay`,
  crewSize: (reason, words) =>
    `${step(words, reason)} takes ${people(reason.minutes)}${
      reason.skill === undefined ? '' : ` for ${words.skill(reason.skill)}`
    }, not ${reason.limit}`,
  unknownPerson: (reason, words) => `there is no ${person(words, reason)} in the crew`,
  unskilled: (reason, words) =>
    `${person(words, reason)} does not have the skill ${words.skill(reason.skill ?? '?')}`,
  personAway: (reason, words) =>
    `${person(words, reason)} is not free from ${at(words, reason.from)} until ${at(words, reason.to)}`,
  personTwice: (reason, words) => `${person(words, reason)} is named twice for ${step(words, reason)}`,
  earlyHandover: (reason, words) =>
    `the last step ends ${at(words, reason.to)}, after the handover ${at(words, reason.from)}`,
  crewBusy: (reason, words) =>
    `${reason.minutes === 1 ? 'nobody' : `no team of ${reason.minutes}`} with the skill ${words.skill(reason.skill ?? '?')} is free for ${step(words, reason)} before ${at(words, reason.to)}`,
  cure: (reason, words) =>
    `${step(words, reason)} runs until ${at(words, reason.from)}${
      reason.to === undefined ? '' : `; the shop opens ${at(words, reason.to)}`
    }`,
  holdsDoor: (reason, words) =>
    `${step(words, reason)} ends ${at(words, reason.from)}; the shop opens ${at(words, reason.to)}`,
  shopClosed: (reason, words) =>
    `the shop is closed from ${at(words, reason.from)} until ${at(words, reason.to)}`,
  recoatWait: (reason, words) =>
    `${step(words, reason)} may start only ${span(words, reason.minutes)} after the step before it: ${at(words, reason.to)}`,
  recoatLimit: (reason, words) =>
    `${step(words, reason)} must start within ${span(words, reason.minutes)} of the step before it`,
  pinned: (reason, words) => `${step(words, reason)} is kept to ${at(words, reason.from)}`,
  noBay: (reason, words) =>
    `no bay ${reason.capability === undefined ? 'is allowed' : `is equipped for ${words.capability(reason.capability)}`}, which ${step(words, reason)} needs`,
  noSkill: (reason, words) =>
    `${step(words, reason)} takes ${people(reason.minutes)} with the skill ${words.skill(reason.skill ?? '?')}; the crew has ${reason.limit}`,
  tooLong: (reason, words) =>
    `${step(words, reason)} takes ${span(words, reason.minutes)} unbroken; the longest opening has ${span(words, reason.limit)}`,
  onlyBay: (reason, words) => `${step(words, reason)} must stay in the bay of the step before`,
  horizon: (reason, words) => `the plan ends ${at(words, reason.to)}; the job would go on after it`,
  workItself: (reason, words) => `the work itself lasts until ${at(words, reason.to)}`,
}

/** One reason in a plain sentence without a full stop, with the shop's own names and times. */
export function reasonText(reason: Reason, words: Words): string {
  return texts[reason.code](reason, words)
}
