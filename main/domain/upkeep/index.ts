/** Upkeep: plans and due visits, how long a protectant lasts, spreading visits over weeks, reminders and results. */
export {
  checkFactors,
  distanceChoice,
  type Exposure,
  type ExposureFactor,
  type FactorChoice,
  type FactorMark,
  STARTING_FACTORS,
} from './exposure/factors.ts'
export {
  CLASS_BORDERS,
  type ExposureClass,
  exposureClass,
  type IntervalStep,
  intervalWords,
  LIMITS,
  type ScaledInterval,
  scaleInterval,
} from './exposure/interval.ts'
export { type Confidence, deviates } from './life/confidence.ts'
export { type CurvePoint, lifeCurve } from './life/curve.ts'
export { checkPrior, type FitOptions, fitLife, type LifeFit, type LifePrior } from './life/fit.ts'
export { type DatedInspection, type LearnedLife, learnLife, type ObservedLife } from './life/learn.ts'
export { type AgeRange, ageRange } from './life/range.ts'
export { checkReadings, type Inspection, type LifeReading, readingOf } from './life/reading.ts'
export { ageAtSurvival, conditionalAge, survival, type Weibull, weibullThrough } from './life/weibull.ts'
export { visitAnswered } from './plan/closes.ts'
export type { DueState } from './plan/due.ts'
export { type DueEntry, dueList, type ListedDue } from './plan/dueList.ts'
export { type DueQuestion, type NextDue, type NoneDue, nextDue } from './plan/nextDue.ts'
export {
  type Absence,
  type Anchor,
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
  type KeptPlan,
  type LastLook,
  learnedWords,
  proposeInterval,
  proposeVisit,
  WORTH_PROPOSING,
} from './plan/propose.ts'
export { startingPlans, topperRule, type UpkeepStart } from './plan/startingPlans.ts'
export { ruleWords } from './recurrence/ruleWords.ts'
export { BACK_OFF, type BackOff, waitAfter } from './reminders/backOff.ts'
export {
  type Channel,
  type ConsentEntry,
  type ConsentState,
  checkConsent,
  consentState,
  sameAddress,
} from './reminders/consent.ts'
export { checkHeaderText, headerProblem } from './reminders/headerText.ts'
export {
  maySend,
  type NoSendCode,
  type PastSend,
  type SendDecision,
  type SendQuestion,
  type SendRules,
} from './reminders/maySend.ts'
export { type MergeFacts, mergeValues } from './reminders/mergeValues.ts'
export {
  type Draft,
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
  type CrashRisk,
  deferred,
  putBack,
  recover,
  refused,
  retry,
  revise,
  unanswered,
  withdraw,
} from './reminders/outbox.ts'
export { afterOutcome, type FollowUp, type NextStep, type Outcome } from './reminders/outcome.ts'
export { checkSendHours, nextSendAt, type SendHours } from './reminders/sendHours.ts'
export { type SmtpStage, type SmtpVerdict, smtpVerdict } from './reminders/smtpAnswer.ts'
export {
  checkTemplate,
  checkWords,
  type Filled,
  fill,
  LAW_NOTE,
  languageFor,
  MERGE_FIELDS,
  type MergeField,
  type MergeValues,
  type Template,
  type TemplateWords,
} from './reminders/template.ts'
export { startingTemplates, VISIT_NAMES } from './reminders/templates/index.ts'
export { oneClickReady, type UnsubscribeWays, unsubscribeHeaders } from './reminders/unsubscribe.ts'
export { type RemindedVisit, type ResultLine, type ResultShare, reminderResults } from './results/results.ts'
export { type ShareRange, wilson } from './results/wilson.ts'
export {
  type PlacedVisit,
  type SpreadResult,
  type SpreadVisit,
  spread,
} from './spread/spread.ts'
export type { TightWeeks } from './spread/weekFlow.ts'
export { targetDay, visitKey, type WeekPlan, weekWishes } from './spread/weeks.ts'
