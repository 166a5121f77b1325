import { Progress } from '@mantine/core'
import type { LaidView } from '../../../../main/api/views.ts'
import pieces from '../../../parts/pieces.module.css'
import { durationWords } from '../../../parts/time.ts'

/** How far the search is: better or not, and how much better it could still get. */
export function Standing({ run }: { run: LaidView }) {
  return (
    <div role="status">
      {run.working && <Progress value={100} animated aria-label="Looking for a better plan" mb={6} />}
      <p style={{ margin: 0 }}>
        {run.proven && run.found && run.changes.length === 0 && <span className={pieces.kept}>✓ </span>}
        {standingWords(run)}
      </p>
    </div>
  )
}

function standingWords(run: LaidView): string {
  const { working, proven, found, changes, stopped } = run
  const left = gapWords(run)
  if (!found)
    return proven
      ? 'No plan fits all these cars any more. Move the promise of one of them, or look at fewer days.'
      : working
        ? `Looking for a place for ${run.cars} cars …`
        : 'Nothing found before it was stopped. Let it look longer, or look at fewer days.'
  const what =
    changes.length === 0
      ? `Nothing better ${working ? 'yet' : 'found'}`
      : `${changes.length} ${changes.length === 1 ? 'car' : 'cars'} could stand better`
  if (proven)
    return changes.length === 0
      ? 'Nothing is better than the present plan: proven.'
      : `${what}. No plan is better than this one: proven.`
  if (working) return `${what}; ${left}.`
  return `${what}${stopped ? ' before it was stopped' : ''}. Not proven: ${left}.`
}

/** How much better it could still get, by the first of its parts that is not proven. */
function gapWords({ objective, bound }: LaidView): string {
  if (!objective || !bound) return 'how much better is not known yet'
  if (objective.lateMin > bound.lateMin)
    return `at most ${durationWords(objective.lateMin - bound.lateMin)} of lateness could still go`
  if (objective.blockedMin > bound.blockedMin)
    return `nobody need wait longer; at most ${durationWords(objective.blockedMin - bound.blockedMin)} of blocked bays could still go`
  if (objective.moves > bound.moves)
    return `at most ${objective.moves - bound.moves} moves of cars could still go`
  return 'only how few cars must change is still open'
}
