/** What the work order says of single panels: what differs from the paint, what is thin, what is to be decided. */
import type { OrderedPanel } from '../../documents/workOrder.ts'
import { weekdayDate } from '../../domain/calendar/index.ts'
import { say } from '../../domain/language/index.ts'
import { carThickness, thicknessWords } from '../../domain/measure/index.ts'
import { type PanelName, type PanelNoted, panelNames } from '../../domain/shop/index.ts'
import { listWords } from '../../domain/words.ts'
import { fromJson } from '../../store/json.ts'
import type { Tx } from '../../store/store.ts'
import { shopOf } from '../desk/shopView.ts'
import { forbidden, intakeJob, lastDraft } from '../intake/jobPaint.ts'
import { shopMeasureRules } from '../intake/measuring.ts'

/** Panel by panel in the order of the car, then what the paint forbids and how it was decided, a sentence each. */
export async function orderedPanels(
  tx: Tx,
  { id, nowAt, zone }: { id: string; nowAt: number; zone: string },
): Promise<{ panels: OrderedPanel[]; forbids: string[] }> {
  const [job, rules, { units }] = await Promise.all([intakeJob(tx, id), shopMeasureRules(tx), shopOf(tx)])
  const noted = fromJson<PanelNoted[] | null>(job.vehicle.panels) ?? []
  const measured = carThickness(lastDraft(job)?.thickness ?? [], rules.thickness).panels
  const panels = panelNames.flatMap((name): OrderedPanel[] => {
    const differs = noted.find(({ panel }) => panel === name)
    const read = measured.find(({ panel }) => panel === name)
    if (!differs && !read) return []
    return [
      {
        name: say(name),
        finish: differs ? finishWords(differs) : '',
        thinnest: read ? thicknessWords(read.leastUm, units) : '',
        mind: read?.belowFloor ? say('Under the floor: no correction without a reason.') : '',
      },
    ]
  })
  const decided = job.decisions
    .filter(({ decision }) => decision === 'do it')
    .map(({ treatment, panels: of, reason }) =>
      say('{treatment} on {panels} all the same: {reason}.', {
        treatment,
        panels: listWords(fromJson<PanelName[]>(of).map(panel => say(panel))),
        reason,
      }),
    )
  const open = forbidden(job, nowAt, { zone, units, rules }).map(({ treatment, words }) =>
    say('Decide before {treatment}: {words}', { treatment, words }),
  )
  return { panels, forbids: [...decided, ...open] }
}

function finishWords({ finish, since }: PanelNoted): string {
  return since === null
    ? say(finish)
    : say('{finish} since {since}', { finish: say(finish), since: weekdayDate(since) })
}
