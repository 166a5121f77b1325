import type { Channel, DueState, MessageState, Outcome, PlanKind } from '../../../main/api/views.ts'
import { say } from '../../../main/domain/language/index.ts'
import { choicesFrom } from '../../parts/shopWords.ts'

/** What the codes of upkeep are called at the desk. */

export const channelWords: Record<Channel, string> = {
  email: say('E-mail'),
  letter: say('Letter'),
  call: say('Call||an owner'),
  text: say('Text'),
}

export const channelChoices = choicesFrom(channelWords)

export const dueWords: Record<DueState, string> = {
  overdue: say('Overdue'),
  due: say('Due now'),
  soon: say('Soon'),
  later: say('Later'),
}

/** A sign beside each, so that no colour is needed. */
export const dueSigns: Record<DueState, string> = { overdue: '⚑', due: '●', soon: '◐', later: '○' }

export const kindWords: Record<PlanKind, string> = {
  'first-wash': say('First wash'),
  'check-up': say('Check-up'),
  topper: say('Topper'),
  inspection: say('Inspection'),
  other: say('Other'),
}

export const kindChoices = choicesFrom(kindWords)

export const stateWords: Record<MessageState, string> = {
  draft: say('to review'),
  approved: say('approved'),
  sending: say('on its way'),
  sent: say('sent'),
  failed: say('failed'),
  withdrawn: say('withdrawn'),
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
  {
    value: 'booked',
    label: say('Booked'),
    about: say('They booked; nothing more is written about this visit'),
  },
  { value: 'later', label: say('Later'), about: say('They want to be asked again') },
  { value: 'no', label: say('No'), about: say('They said no to this visit; its next one comes in its time') },
  { value: 'unreachable', label: say('Not reached'), about: say('Nobody answered; it is tried again') },
  { value: 'sold', label: say('Car sold'), about: say('Nothing more falls due for this car') },
]

export const outcomeWords: Record<Outcome, string> = {
  booked: say('booked'),
  later: say('later'),
  no: say('said no'),
  unreachable: say('not reached'),
  sold: say('car sold'),
}

/** What came of approving several messages together. */
export function approvedWords({ approved, words }: { approved: number; words: readonly string[] }): string {
  return [say('✓ {approved} approved.', { approved }), ...words].join(' ')
}
