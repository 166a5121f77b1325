import { durationWords } from '../calendar/index.ts'
import { say, sayKept, word } from '../language/index.ts'
import { listWords } from '../words.ts'

export type Detail = Record<string, unknown>
export type When = (at: number) => string

const at = (detail: Detail, key: string, when: When) =>
  typeof detail[key] === 'number' ? when(detail[key]) : say('a time not kept')

const because = (detail: Detail) =>
  detail.reason ? say(', because: {reason}', { reason: detail.reason }) : ''

/** What was sold before and is now, where that changed. */
const otherWork = ({ treatments }: Detail) => {
  const [before, after] = Array.isArray(treatments) ? (treatments as string[][]) : []
  return before && after
    ? say('; {after} instead of {before}', { after: listWords(after), before: listWords(before) })
    : ''
}

const listed = (panels: unknown) => (Array.isArray(panels) ? listWords(panels.map(sayKept)) : say('panels'))

/** Each act on a job in words; what the audit line kept is all there is. */
export const jobWords: Record<string, (detail: Detail, when: When) => string> = {
  held: (detail, when) => say('place held until {detail}', { detail: at(detail, 'heldUntilAt', when) }),
  lapsed: () => say('the hold ran out'),
  released: () => say('the hold was released'),
  booked: (detail, when) => say('booked, promised for {detail}', { detail: at(detail, 'promisedAt', when) }),
  moved: (detail, when) =>
    say('moved to {detail}, handover {detail2}', {
      detail: at(detail, 'startAt', when),
      detail2: at(detail, 'handoverAt', when),
    }),
  pinned: () => say('pinned: it stays where it is when the floor is laid anew'),
  unpinned: () => say('not pinned any more'),
  'cure lengthened': detail =>
    say('"{step}" takes {longer} longer', {
      step: detail.step,
      longer: durationWords(Number(detail.moreMin)),
    }),
  arrived: (detail, when) => say('car arrived {detail}', { detail: at(detail, 'at', when) }),
  started: (detail, when) =>
    say('"{step}" begun {detail}{detail2}', {
      step: detail.step,
      detail: at(detail, 'at', when),
      detail2: because(detail),
    }),
  given: detail =>
    say('"{step}" given to {to} instead of {from}', { step: detail.step, to: detail.to, from: detail.from }),
  'passed on': (detail, when) =>
    say('"{step}" passed from {from} to {to} {detail}', {
      step: detail.step,
      from: detail.from,
      to: detail.to,
      detail: at(detail, 'at', when),
    }),
  finished: (detail, when) =>
    say('"{step}" finished {detail}', { step: detail.step, detail: at(detail, 'at', when) }),
  'taken back': (detail, when) =>
    detail.step
      ? say('taken back: {what} of "{step}", {detail}', {
          what: sayAnswer(detail.what),
          step: detail.step,
          detail: at(detail, 'at', when),
        })
      : say('taken back: {what}, {detail}', { what: sayAnswer(detail.what), detail: at(detail, 'at', when) }),
  'work added': detail =>
    say('added before "{step}", which came too late: {added}', { step: detail.step, added: detail.added }),
  'work refused': detail =>
    say('nothing added before "{step}", which came too late{detail}', {
      step: detail.step,
      detail: because(detail),
    }),
  'test spot': detail =>
    say('test spot: {combination}, {perPanelMin} a panel', {
      combination: detail.combination,
      perPanelMin: durationWords(Number(detail.perPanelMin)),
    }),
  'test spot answered': (detail, when) =>
    detail.answer === 'agreed'
      ? say(
          'test spot agreed by {by} ({how}): correction {afterMin} instead of {beforeMin}, now expected {detail}',
          {
            by: detail.by,
            how: sayKept(detail.how),
            afterMin: durationWords(Number(detail.afterMin)),
            beforeMin: durationWords(Number(detail.beforeMin)),
            detail: at(detail, 'handoverAt', when),
          },
        )
      : say('test spot {answer} by {by} ({how}): it stays as it was booked', {
          answer: sayAnswer(detail.answer),
          by: detail.by,
          how: sayKept(detail.how),
        }),
  'test spot taken back': detail => say('test spot taken back: {what}', { what: answerWords(detail.what) }),
  lent: detail => say('a {kind} lent with it', { kind: sayKept(detail.kind) }),
  'loan taken back': detail => say('{name} taken back', { name: detail.name }),
  'ticked off': detail => say('"{check}" ticked off by {by}', { check: detail.check, by: detail.by }),
  'tick taken back': detail =>
    say('tick of {by} taken back: "{check}"', { by: detail.by, check: detail.check }),
  promised: (detail, when) =>
    say('promised for {detail} instead of {detail2}', {
      detail: at(detail, 'to', when),
      detail2: at(detail, 'from', when),
    }),
  told: detail =>
    detail.channel === 'call'
      ? say('the customer was told by phone')
      : detail.channel === 'outbox'
        ? say('words to the customer given to the outbox')
        : say('the customer was written to'),
  'handed to the server': () => say('the mail to the customer was handed to the server'),
  sent: () => say('the mail to the customer has left'),
  'not sent': detail => say('the mail to the customer has not left: {words}', { words: detail.words }),
  'found cut off': () => say('the mail to the customer was cut off: it may have left'),
  noted: detail => say('noted: {words}', { words: detail.words }),
  rebooked: (detail, when) =>
    say('changed: comes {to} instead of {from}, promised for {promisedTo} instead of {promisedFrom}', {
      to: at(detail, 'to', when),
      from: at(detail, 'from', when),
      promisedTo: at(detail, 'promisedTo', when),
      promisedFrom: at(detail, 'promisedFrom', when),
    }) + otherWork(detail),
  'did not come': (detail, when) =>
    say('did not come, was expected {dueAt}', { dueAt: at(detail, 'dueAt', when) }),
  'comes later': (detail, when) =>
    say('comes {at} instead of {dueAt}', { at: at(detail, 'at', when), dueAt: at(detail, 'dueAt', when) }),
  'fetched later': (detail, when) => say('will be fetched {at}', { at: at(detail, 'at', when) }),
  'takes longer': detail =>
    say('"{step}" takes {after} instead of {before}', {
      step: detail.step,
      after: durationWords(Number(detail.after)),
      before: durationWords(Number(detail.before)),
    }),
  cancelled: detail => say('cancelled') + because(detail),
  heated: (detail, when) =>
    say('heated cure recorded, {detail} to {detail2}{counted}', {
      detail: at(detail, 'fromAt', when),
      detail2: at(detail, 'toAt', when),
      counted: detail.counted ? '' : say(', met no row of a data sheet'),
    }),
  'heating taken back': (detail, when) =>
    say('heated cure taken back, {detail}', { detail: at(detail, 'fromAt', when) }),
  'record drafted': () => say('applied record saved'),
  'record signed': detail => say('applied record signed by {signedBy}', { signedBy: detail.signedBy }),
  'record corrected': detail =>
    say('applied record corrected by {signedBy}{detail}', {
      signedBy: detail.signedBy,
      detail: because(detail),
    }),
  'intake saved': () => say('intake saved'),
  'intake signed': () => say('intake signed by the owner'),
  'intake corrected': detail => say('intake corrected and signed again{detail}', { detail: because(detail) }),
  'measured after the work': () => say('measured after the work'),
  'photo kept': () => say('photo added'),
  'photo removed': () => say('photo removed'),
  'panels left out': detail =>
    say('"{treatment}" leaves out {panels} ({rule})', {
      treatment: detail.treatment,
      panels: listed(detail.panels),
      rule: sayKept(detail.rule),
    }),
  'done all the same': detail =>
    say('"{treatment}" on {panels} all the same ({rule}){detail}', {
      treatment: detail.treatment,
      panels: listed(detail.panels),
      rule: sayKept(detail.rule),
      detail: because(detail),
    }),
  'handed over': (detail, when) =>
    say('handed over {detail}{detail2}{detail3}', {
      detail: at(detail, 'at', when),
      detail2: againstWords(detail),
      detail3: because(detail),
    }),
}

/** What an act keeps of what it took back, and of an answer. */
const keptWords: ReadonlySet<string> = new Set<string>([
  word('arrival'),
  word('start'),
  word('finish'),
  word('its result'),
  word('agreed'),
  word('declined'),
])

const sayAnswer = (text: unknown) => (keptWords.has(String(text)) ? say(String(text)) : String(text))

/** "its result", or the answer that was taken back with whose it was. */
function answerWords(what: unknown): string {
  const [, answer, by] = /^(agreed|declined) by (.*)$/s.exec(String(what)) ?? []
  return answer === undefined ? sayAnswer(what) : say('{answer} by {by}', { answer: say(answer), by })
}

function againstWords(detail: Detail): string {
  const { at, safeAt, undone, open } = detail as {
    at: number
    safeAt?: number
    undone: string[]
    open?: string[]
  }
  const parts = [
    ...(safeAt !== undefined && at < safeAt
      ? [say("{safeAt} before the profile's earliest", { safeAt: durationWords(safeAt - at) })]
      : []),
    ...(undone?.length > 0 ? [say('{undone} not finished', { undone: listWords(undone) })] : []),
    ...(open && open.length > 0 ? [say('{open} not ticked off', { open: listWords(open) })] : []),
  ]
  return parts.length > 0 ? `, ${listWords(parts)}` : ''
}
