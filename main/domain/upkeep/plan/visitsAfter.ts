import { dateOfDay, dayNumber } from '../../calendar/index.ts'
import { dayRule } from '../recurrence/dayRule.ts'
import type { DueFrame } from './due.ts'
import type { ListedDue } from './dueList.ts'
import type { DueQuestion } from './nextDue.ts'
import type { Plan } from './plan.ts'
import { memo, walkAfter } from './walkAfter.ts'

/** Plans alike by the words of `standsThrough`, with the days of their open visit. */
export interface AlikeOpen {
  readonly alike: string
  readonly dueOn: string
  readonly ruleOn: string
}

/**
 * The visits after the open one that plans alike have up to a day, as `dueList` projects them, without reading any of
 * the plans: what they share says it all. One list for each question.
 */
export function visitsAfter(
  open: readonly AlikeOpen[],
  question: DueQuestion & { readonly until: string },
): Omit<ListedDue, 'planId'>[][] {
  const until = dayNumber(question.until, 'until')
  const { isOpen } = question
  const text = memo(dateOfDay)
  const frame: DueFrame = {
    today: dayNumber(question.today, 'today'),
    soonDays: question.soonDays ?? 30,
    soldOn: null,
    away: [],
    isOpen: isOpen ? memo(day => isOpen(text(day))) : null,
  }
  const shared = new Map<string, ReturnType<typeof readWords>>()
  return open.map(({ alike, dueOn, ruleOn }) => {
    const its = shared.get(alike) ?? readWords(alike, question.zone)
    shared.set(alike, its)
    const visits: Omit<ListedDue, 'planId'>[] = []
    const from = { ruleDay: dayNumber(ruleOn), due: dayNumber(dueOn), moved: null }
    walkAfter(its.plan, its.rule, its.standing, from, frame, until, ({ ruleDay, due, first, last, state }) =>
      visits.push({
        ruleOn: text(ruleDay),
        dueOn: text(due),
        firstOn: text(first),
        lastOn: text(last),
        state,
        projected: true,
      }),
    )
    return visits
  })
}

/** The words that plans alike share. */
export function alikeWords({ anchor, earlyDays, lateDays, rule }: Plan): string {
  return [anchor.to === 'date' ? anchor.on : 'last-done', earlyDays, lateDays, rule].join(' ')
}

function readWords(alike: string, zone: string) {
  const [anchor = '', earlyDays, lateDays, ...rule] = alike.split(' ')
  const byDates = anchor !== 'last-done'
  const start = byDates ? dayNumber(anchor) : 0
  return {
    plan: {
      anchor: byDates
        ? { to: 'date' as const, on: anchor }
        : { to: 'last-done' as const, since: '', event: '' },
      earlyDays: Number(earlyDays),
      lateDays: Number(lateDays),
    },
    rule: dayRule(rule.join(' '), zone),
    standing: { start, after: start - 1, lastDone: null, skipped: new Set<number>(), moved: new Map() },
  }
}
