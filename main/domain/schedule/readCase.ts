import type { Span } from '../calendar/spans.ts'
import { say } from '../language/index.ts'
import { refuse } from '../refusal.ts'
import {
  apartAt,
  distinctIds,
  flagAt,
  type Json,
  knownAt,
  listAt,
  objectAt,
  spanAt,
  textAt,
  wholeAt,
  wholeOrNullAt,
} from './fields.ts'
import type { FloorJob, FloorProblem } from './plan/types.ts'
import type { Bay, Help, NewJob, Person, Problem, Stay, Step } from './types.ts'

/**
 * A case read from JSON in the published format (tests/reference/README.md tells it with the app's extensions).
 * Throws a Refusal that names the first field that will not do: minutes that are negative, broken or missing, waits
 * that contradict each other, bays nobody has declared, pins no grid point lies in. A capability or a skill nobody
 * has is no error: such a case is sound and has no answer.
 */
export function readCase(json: unknown, field = ''): Problem {
  const { source, at, names, shop } = readShop(json, field)
  return { ...shop, newJob: readJob(source.newJob, at('newJob'), names, shop) }
}

/**
 * The most grid points between the first release and the horizon of a floor: three years of quarter hours. The solver
 * keeps a number for each of them and each step.
 */
const mostPoints = 105_120

/**
 * A case with `jobs`, all of them to be laid, read as `readCase` reads one with a `newJob`. Each job has `due` and
 * `weight` besides (0 to 1000; 1 unless given).
 */
export function readFloor(json: unknown, field = ''): FloorProblem {
  const { source, at, names, shop } = readShop(json, field)
  const jobs = listAt(source.jobs, at('jobs'), (item, path): FloorJob => {
    const { id, release, steps } = readJob(item, path, names, shop)
    const { due, weight } = objectAt(item, path)
    return {
      id,
      release,
      steps,
      due: wholeAt(due, `${path}.due`, 0),
      weight: weight == null ? 1 : wholeAt(weight, `${path}.weight`, 0, 1000),
    }
  })
  distinctIds(jobs, at('jobs'))
  const first = Math.min(shop.horizon, ...jobs.map(job => job.release))
  if ((shop.horizon - first) / shop.grid > mostPoints)
    refuse(
      'horizon-far',
      { [at('horizon')]: shop.horizon },
      say('is more than {mostPoints} grid points after the first release; bring it nearer.', { mostPoints }),
    )
  return { ...shop, jobs }
}

/** What every case has, whatever is asked of it. */
function readShop(json: unknown, field: string) {
  const at = (name: string) => (field === '' ? name : `${field}.${name}`)
  const source = objectAt(json, field === '' ? 'case' : field)
  const grid = wholeAt(source.grid, at('grid'), 1, 60)
  const gridFrom = source.gridFrom == null ? 0 : wholeAt(source.gridFrom, at('gridFrom'), 0)
  const horizon = wholeAt(source.horizon, at('horizon'), 0)
  const open = apartAt(source.open, at('open'))
  const bays = listAt(source.bays, at('bays'), readBay)
  distinctIds(bays, at('bays'))
  const crew = listAt(source.crew, at('crew'), readPerson, [])
  distinctIds(crew, at('crew'))
  const names: Names = {
    bays: new Set(bays.map(bay => bay.id)),
    crew: new Set(crew.map(person => person.id)),
  }
  const fixed = listAt(source.fixed, at('fixed'), (item, path) => readStay(item, path, names.bays), [])
  const id = source.id == null ? undefined : textAt(source.id, at('id'))
  return { source, at, names, shop: { id, grid, gridFrom, horizon, open, bays, crew, fixed } }
}

interface Names {
  readonly bays: ReadonlySet<string>
  readonly crew: ReadonlySet<string>
}

interface Grid {
  readonly grid: number
  readonly gridFrom: number
}

function readBay(json: unknown, field: string): Bay {
  const source = objectAt(json, field)
  return {
    id: textAt(source.id, `${field}.id`),
    can: listAt(source.can, `${field}.can`, textAt),
    closed: apartAt(source.closed, `${field}.closed`, []),
  }
}

function readPerson(json: unknown, field: string): Person {
  const source = objectAt(json, field)
  return {
    id: textAt(source.id, `${field}.id`),
    skills: listAt(source.skills, `${field}.skills`, textAt),
    away: listAt(source.away, `${field}.away`, spanAt, []),
  }
}

function readStay(json: unknown, field: string, bays: ReadonlySet<string>): Stay {
  const source = objectAt(json, field)
  const { from, to }: Span = spanAt([source.from, source.to], field)
  const job = source.job == null ? {} : { job: textAt(source.job, `${field}.job`) }
  return { bay: knownAt(source.bay, `${field}.bay`, bays, 'bays'), from, to, ...job }
}

function readJob(json: unknown, field: string, names: Names, grid: Grid): NewJob {
  const source = objectAt(json, field)
  const release = source.release == null ? 0 : wholeAt(source.release, `${field}.release`, 0)
  const steps = listAt(source.steps, `${field}.steps`, (item, path) => readStep(item, path, names, grid))
  if (steps.length === 0)
    refuse('steps-empty', { [`${field}.steps`]: [] }, say('the list is empty; give at least one step.'))
  return {
    id: textAt(source.id, `${field}.id`),
    release,
    asked: source.asked == null ? release : wholeAt(source.asked, `${field}.asked`, 0),
    steps,
    preferBays: namesAt(source.preferBays, `${field}.preferBays`, names.bays, 'bays'),
  }
}

function namesAt(
  value: unknown,
  field: string,
  known: ReadonlySet<string>,
  what: string,
): string[] | undefined {
  if (value == null) return undefined
  return listAt(value, field, (item, path) => knownAt(item, path, known, what))
}

function readStep(json: unknown, field: string, names: Names, grid: Grid): Step {
  const source = objectAt(json, field)
  const { kind } = source
  if (kind !== 'work' && kind !== 'hold')
    refuse(
      kind === undefined ? 'field-missing' : 'field-type',
      { [`${field}.kind`]: kind },
      kind === undefined
        ? say('is missing; give "work" or "hold".')
        : say('{kind} will not do; give "work" or "hold".', { kind: JSON.stringify(kind) }),
    )
  const common = {
    minutes: wholeAt(source.minutes, `${field}.minutes`, 1),
    needs: source.needs == null ? null : textAt(source.needs, `${field}.needs`),
    sameBay: flagAt(source.sameBay, `${field}.sameBay`, false),
    bays: namesAt(source.bays, `${field}.bays`, names.bays, 'bays'),
    preferBays: namesAt(source.preferBays, `${field}.preferBays`, names.bays, 'bays'),
    ...readWaits(source, field),
    ...readPins(source, field, grid),
  }
  if (kind === 'hold')
    return { ...common, kind, moveAfter: wholeOrNullAt(source.moveAfter, `${field}.moveAfter`, 0) }
  if (source.skill === undefined)
    refuse(
      'field-missing',
      { [`${field}.skill`]: undefined },
      say('is missing; give a skill, or null for none.'),
    )
  const skill = source.skill === null ? null : textAt(source.skill, `${field}.skill`)
  return {
    ...common,
    kind,
    skill,
    crew: source.crew == null ? 1 : wholeAt(source.crew, `${field}.crew`, skill === null ? 0 : 1),
    split: flagAt(source.split, `${field}.split`, false),
    help: source.help == null ? null : readHelp(source.help, `${field}.help`, common.minutes),
    preferCrew: namesAt(source.preferCrew, `${field}.preferCrew`, names.crew, 'crew'),
  }
}

function readHelp(json: unknown, field: string, stepMin: number): Help {
  const source = objectAt(json, field)
  const minutes = wholeAt(source.minutes, `${field}.minutes`, 1, stepMin)
  return {
    crew: source.crew == null ? 1 : wholeAt(source.crew, `${field}.crew`, 1),
    from: source.from == null ? 0 : wholeAt(source.from, `${field}.from`, 0, stepMin - minutes),
    minutes,
  }
}

function readWaits(source: Json, field: string) {
  const waitMin = wholeOrNullAt(source.waitMin, `${field}.waitMin`, 0)
  const waitMax = wholeOrNullAt(source.waitMax, `${field}.waitMax`, 0)
  if (waitMin !== null && waitMax !== null && waitMin > waitMax)
    refuse(
      'waits-contradict',
      { [`${field}.waitMax`]: waitMax },
      say('{waitMax} is less than waitMin {waitMin}; let the longest wait be at least the shortest.', {
        waitMax,
        waitMin,
      }),
    )
  return { waitMin, waitMax }
}

function readPins(source: Json, field: string, { grid, gridFrom }: Grid) {
  const startFrom = wholeOrNullAt(source.startFrom, `${field}.startFrom`, 0)
  const startTo = wholeOrNullAt(source.startTo, `${field}.startTo`, 0)
  if (startFrom !== null && startTo !== null) {
    const first = gridFrom + Math.ceil((startFrom - gridFrom) / grid) * grid
    if (first > startTo)
      refuse(
        startFrom > startTo ? 'pins-contradict' : 'start-off-grid',
        { [`${field}.startTo`]: startTo },
        say('no start from {startFrom} to {startTo} lies on the grid of {grid}; widen it to hold {first}.', {
          startFrom,
          startTo,
          grid,
          first,
        }),
      )
  }
  return { startFrom, startTo }
}
