import { durationWords } from '../calendar/index.ts'
import { listWords } from '../words.ts'

export type Detail = Record<string, unknown>
export type When = (at: number) => string

const at = (detail: Detail, key: string, when: When) =>
  typeof detail[key] === 'number' ? when(detail[key]) : 'a time not kept'

const because = (detail: Detail) => (detail.reason ? `, because: ${detail.reason}` : '')

const listed = (panels: unknown) => (Array.isArray(panels) ? listWords(panels.map(String)) : 'panels')

/** Each act on a job in words; what the audit line kept is all there is. */
export const jobWords: Record<string, (detail: Detail, when: When) => string> = {
  held: (detail, when) => `place held until ${at(detail, 'heldUntilAt', when)}`,
  lapsed: () => 'the hold ran out',
  released: () => 'the held place was let go',
  booked: (detail, when) => `booked, promised for ${at(detail, 'promisedAt', when)}`,
  moved: (detail, when) =>
    `moved to ${at(detail, 'startAt', when)}, handover ${at(detail, 'handoverAt', when)}`,
  pinned: () => 'pinned: it stays where it is when the floor is laid anew',
  unpinned: () => 'not pinned any more',
  arrived: (detail, when) => `car arrived ${at(detail, 'at', when)}`,
  started: (detail, when) => `"${detail.step}" begun ${at(detail, 'at', when)}${because(detail)}`,
  finished: (detail, when) => `"${detail.step}" finished ${at(detail, 'at', when)}`,
  'taken back': (detail, when) =>
    `taken back: ${detail.what}${detail.step ? ` of "${detail.step}"` : ''}, ${at(detail, 'at', when)}`,
  'work added': detail => `added before "${detail.step}", which came too late: ${detail.added}`,
  'work refused': detail => `nothing added before "${detail.step}", which came too late${because(detail)}`,
  'test spot': detail =>
    `test spot: ${detail.combination}, ${durationWords(Number(detail.perPanelMin))} a panel`,
  'test spot answered': (detail, when) =>
    `test spot ${detail.answer} by ${detail.by} (${detail.how})` +
    (detail.answer === 'agreed'
      ? `: correction ${durationWords(Number(detail.afterMin))} instead of ${durationWords(Number(detail.beforeMin))}, ` +
        `now expected ${at(detail, 'handoverAt', when)}`
      : ': it stays as it was booked'),
  'test spot taken back': detail => `test spot taken back: ${detail.what}`,
  lent: detail => `a ${detail.kind} lent with it`,
  'loan taken back': detail => `${detail.name} taken back`,
  'ticked off': detail => `"${detail.check}" ticked off by ${detail.by}`,
  'tick taken back': detail => `tick of ${detail.by} taken back: "${detail.check}"`,
  promised: (detail, when) => `promised for ${at(detail, 'to', when)} instead of ${at(detail, 'from', when)}`,
  noted: detail => `noted: ${detail.words}`,
  cancelled: detail => `cancelled${because(detail)}`,
  heated: (detail, when) =>
    `heated cure recorded, ${at(detail, 'fromAt', when)} to ${at(detail, 'toAt', when)}${detail.counted ? '' : ', met no row of a data sheet'}`,
  'heating taken back': (detail, when) => `heated cure taken back, ${at(detail, 'fromAt', when)}`,
  'record drafted': () => 'applied record saved',
  'record signed': detail => `applied record signed by ${detail.signedBy}`,
  'record corrected': detail => `applied record corrected by ${detail.signedBy}${because(detail)}`,
  'intake saved': () => 'intake saved',
  'intake signed': () => 'intake signed by the owner',
  'intake corrected': detail => `intake corrected and signed again${because(detail)}`,
  'measured after the work': () => 'measured after the work',
  'photo kept': () => 'photo added',
  'photo removed': () => 'photo removed',
  'panels left out': detail => `"${detail.treatment}" leaves out ${listed(detail.panels)} (${detail.rule})`,
  'done all the same': detail =>
    `"${detail.treatment}" on ${listed(detail.panels)} all the same (${detail.rule})${because(detail)}`,
  'handed over': (detail, when) =>
    `handed over ${at(detail, 'at', when)}${againstWords(detail)}${because(detail)}`,
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
      ? [`${durationWords(safeAt - at)} before the profile's earliest`]
      : []),
    ...(undone?.length > 0 ? [`${listWords(undone)} not finished`] : []),
    ...(open && open.length > 0 ? [`${listWords(open)} not ticked off`] : []),
  ]
  return parts.length > 0 ? `, ${listWords(parts)}` : ''
}
