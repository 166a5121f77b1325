import type { Channel, DueState, MessageState, Outcome, PlanKind } from '../../../main/api/views.ts'
import { choicesFrom } from '../../parts/shopWords.ts'

/** What the codes of upkeep are called at the desk. */

export const channelWords: Record<Channel, string> = {
  email: 'E-mail',
  letter: 'Letter',
  call: 'Call',
  text: 'Text',
}

export const channelChoices = choicesFrom(channelWords)

export const dueWords: Record<DueState, string> = {
  overdue: 'Overdue',
  due: 'Due now',
  soon: 'Soon',
  later: 'Later',
}

/** A sign beside each, so that no colour is needed. */
export const dueSigns: Record<DueState, string> = { overdue: '⚑', due: '●', soon: '◐', later: '○' }

export const kindWords: Record<PlanKind, string> = {
  'first-wash': 'First wash',
  'check-up': 'Check-up',
  topper: 'Topper',
  inspection: 'Inspection',
  other: 'Other',
}

export const kindChoices = choicesFrom(kindWords)

export const stateWords: Record<MessageState, string> = {
  draft: 'to review',
  approved: 'approved',
  sending: 'on its way',
  sent: 'sent',
  failed: 'failed',
  withdrawn: 'withdrawn',
}

export const stateSigns: Record<MessageState, string> = {
  draft: '○',
  approved: '◐',
  sending: '➝',
  sent: '✓',
  failed: '✕',
  withdrawn: '–',
}

export const outcomeChoices: { value: Outcome; label: string; about: string }[] = [
  { value: 'booked', label: 'Booked', about: 'They booked; nothing more is written about this visit' },
  { value: 'later', label: 'Later', about: 'They want to be asked again' },
  { value: 'no', label: 'No', about: 'They said no to this visit; its next one comes in its time' },
  { value: 'unreachable', label: 'Not reached', about: 'Nobody answered; it is tried again' },
  { value: 'sold', label: 'Car sold', about: 'Nothing more falls due for this car' },
]

export const outcomeWords: Record<Outcome, string> = {
  booked: 'booked',
  later: 'later',
  no: 'said no',
  unreachable: 'not reached',
  sold: 'car sold',
}

/** What came of approving several messages together. */
export function approvedWords({ approved, words }: { approved: number; words: readonly string[] }): string {
  return [`✓ ${approved} approved.`, ...words].join(' ')
}
