import { Progress } from '@mantine/core'
import type { LaidView } from '../../../../main/api/views.ts'
import { say } from '../../../../main/domain/language/index.ts'
import pieces from '../../../parts/pieces.module.css'
import { Table } from '../../../parts/Table.tsx'
import { durationWords } from '../../../parts/time.ts'

/** How far the search is: better or not, and how much better it could still get. */
export function Standing({ run }: { run: LaidView }) {
  return (
    <>
      <div role="status">
        {run.working && (
          <Progress value={100} animated aria-label={say('Looking for a better plan')} mb={6} />
        )}
        <p style={{ margin: 0 }}>
          {run.proven && run.found && run.changes.length === 0 && <span className={pieces.kept}>✓ </span>}
          {standingWords(run)}
        </p>
      </div>
      <Costs run={run} />
    </>
  )
}

/** What all cars cost together, as they stand and as proposed. */
function Costs({ run: { present, objective, found } }: { run: LaidView }) {
  if (!present || !objective || !found) return null
  const rows = [
    { name: say('Late'), now: durationWords(present.lateMin), proposed: durationWords(objective.lateMin) },
    {
      name: say('Blocked'),
      now: durationWords(present.blockedMin),
      proposed: durationWords(objective.blockedMin),
    },
    { name: say('Moves'), now: String(present.moves), proposed: String(objective.moves) },
  ]
  return (
    <Table
      rows={rows}
      keyOf={row => row.name}
      columns={[
        { head: say('All cars together'), cell: row => row.name },
        { head: say('As it stands'), number: true, cell: row => row.now },
        { head: say('As proposed'), number: true, cell: row => row.proposed },
      ]}
    />
  )
}

function standingWords(run: LaidView): string {
  const { working, proven, found, changes, stopped } = run
  const left = gapWords(run)
  if (!found)
    return proven
      ? say('No plan fits all these cars any more. Move the promise of one of them, or look at fewer days.')
      : working
        ? say('Looking for a place for {cars} cars …', { cars: run.cars })
        : say('Nothing found before it was stopped. Let it look longer, or look at fewer days.')
  const what =
    changes.length === 0
      ? working
        ? say('Nothing better yet')
        : say('Nothing better found')
      : say('{changes} {changes, plural, one {car} other {cars}} could stand better', {
          changes: changes.length,
        })
  if (proven)
    return changes.length === 0
      ? say('The present plan cannot be improved: proven.')
      : say('{what}. No plan is better than this one: proven.', { what })
  if (working) return `${what}; ${left}.`
  return stopped
    ? say('{what} before it was stopped. Not proven: {left}.', { what, left })
    : say('{what}. Not proven: {left}.', { what, left })
}

/** How much better it could still get, by the first of its parts that is not proven. */
function gapWords({ objective, bound }: LaidView): string {
  if (!objective || !bound) return say('how much better is not known yet')
  if (objective.lateMin > bound.lateMin)
    return say('at most {lateMin} of lateness could still go', {
      lateMin: durationWords(objective.lateMin - bound.lateMin),
    })
  if (objective.blockedMin > bound.blockedMin)
    return say('nobody need wait longer; at most {blockedMin} of blocked bays could still go', {
      blockedMin: durationWords(objective.blockedMin - bound.blockedMin),
    })
  if (objective.moves > bound.moves)
    return say('at most {moves} moves of cars could still go', { moves: objective.moves - bound.moves })
  return say('only how few cars must change is still open')
}
