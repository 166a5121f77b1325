/** Upkeep: plans and due visits, how long a protectant lasts, spreading visits over weeks, reminders and results. */
export {
  checkFactors,
  type Exposure,
  STARTING_FACTORS,
} from './exposure/factors.ts'
export {
  exposureClass,
  intervalWords,
  type ScaledInterval,
  scaleInterval,
} from './exposure/interval.ts'
export { lifeCurve } from './life/curve.ts'
export { checkPrior, type LifePrior } from './life/fit.ts'
export { type LearnedLife, learnLife, type ObservedLife } from './life/learn.ts'
export { pooled, readingOf } from './life/reading.ts'
export {
  foundOn,
  horizontalPanels,
  type LookPanel,
  lookPanels,
  type PanelLook,
  type WaterLook,
  waterLooks,
} from './life/twoLooks.ts'
export { visitAnswered } from './plan/closes.ts'
export type { DueState } from './plan/due.ts'
export { dueList, type ListedDue } from './plan/dueList.ts'
export { type DueQuestion, type NextDue, type NoneDue, nextDue } from './plan/nextDue.ts'
export {
  type Absence,
  type CarTimes,
  checkAbsences,
  checkPlan,
  type Plan,
  type PlanKind,
  type VisitRecord,
} from './plan/plan.ts'
export {
  acceptProposal,
  type ChangeProposal,
  learnedWords,
  missingWords,
  proposeInterval,
  proposeVisit,
} from './plan/propose.ts'
export { type StandingDue, standsThrough } from './plan/standsThrough.ts'
export { startingPlans, topperRule } from './plan/startingPlans.ts'
export { upkeepAhead } from './plan/upkeepAhead.ts'
export { visitsAfter } from './plan/visitsAfter.ts'
export { ruleWords } from './recurrence/ruleWords.ts'
export { bookingRules } from './reminders/bookingRules.ts'
export {
  type Channel,
  type ConsentEntry,
  type ConsentState,
  checkConsent,
  consentState,
} from './reminders/consent.ts'
export { maySend, type PastSend, type SendQuestion, type SendRules } from './reminders/maySend.ts'
export { mergeValues } from './reminders/mergeValues.ts'
export {
  type Failure,
  type MessageState,
  messageId,
  newMessage,
  type OutboxMessage,
} from './reminders/message.ts'
export {
  accepted,
  approve,
  beginSending,
  bounced,
  CRASH_RISK,
  CRASH_RISK_WORDS,
  deferred,
  heldAfterRestore,
  putBack,
  recover,
  refused,
  retry,
  revise,
  unanswered,
  withdraw,
} from './reminders/outbox.ts'
export { afterOutcome, type NextStep, type Outcome } from './reminders/outcome.ts'
export { checkSendHours } from './reminders/sendHours.ts'
export { type SmtpStage, smtpVerdict } from './reminders/smtpAnswer.ts'
export {
  checkTemplate,
  checkWords,
  fill,
  LAW_NOTE,
  languageFor,
  MERGE_FIELDS,
  type MergeField,
  type MergeValues,
  type TemplateWords,
} from './reminders/template.ts'
export { startingTemplates, VISIT_NAMES } from './reminders/templates/index.ts'
export { unsubscribeHeaders } from './reminders/unsubscribe.ts'
export { type ResultShare, reminderResults } from './results/results.ts'
export { wilson } from './results/wilson.ts'
export { type SpreadResult, spreadInSteps } from './spread/spread.ts'
export { targetDay, visitKey, weekWishes } from './spread/weeks.ts'
