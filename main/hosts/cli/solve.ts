import { readFileSync } from 'node:fs'
import { parseArgs } from 'node:util'
import { Refusal } from '../../domain/refusal.ts'
import {
  explain,
  type NoOffer,
  type Offer,
  type Problem,
  promise,
  readCase,
  reasonText,
} from '../../domain/schedule/index.ts'
import { plainWords } from './plainWords.ts'

/**
 * `npm run -s solve -- CASE.json [--id ID] --promise`: the answer to a case, or to a file of cases, as JSON on
 * standard output. Exit status 2 and one line on standard error for anything that cannot be read.
 */
const usage = 'use: npm run -s solve -- CASE.json [--id ID] --promise'

function readFlags(args: string[]): { file: string; id: string | undefined } {
  let parsed: { values: { id?: string; promise?: boolean }; positionals: string[] }
  try {
    parsed = parseArgs({
      args,
      allowPositionals: true,
      options: { id: { type: 'string' }, promise: { type: 'boolean' } },
    })
  } catch (error) {
    const { message } = error as Error
    throw new Refusal('bad-flag', 'arguments', args, `${message.split(/[.\n]/)[0]}; ${usage}`)
  }
  const [file, ...more] = parsed.positionals
  if (file === undefined || more.length > 0)
    throw new Refusal('bad-arguments', 'CASE.json', file, `give exactly one case file; ${usage}`)
  if (!parsed.values.promise)
    throw new Refusal(
      'no-question',
      '--promise',
      undefined,
      `is missing, so there is nothing to solve; ${usage}`,
    )
  return { file, id: parsed.values.id }
}

function readJson(file: string): unknown {
  let text: string
  try {
    text = readFileSync(file, 'utf8')
  } catch (error) {
    throw new Refusal('unreadable', file, file, `cannot be read: ${(error as NodeJS.ErrnoException).code}`)
  }
  try {
    return JSON.parse(text)
  } catch (error) {
    throw new Refusal('not-json', file, file, `is not JSON: ${(error as Error).message.split('\n')[0]}`)
  }
}

/** The cases asked for, and whether the file was a single one. */
function readCases(json: unknown, id: string | undefined): { cases: Problem[]; single: boolean } {
  const list = (json as { cases?: unknown } | null)?.cases
  if (list === undefined) {
    const problem = readCase(json)
    if (id !== undefined && problem.id !== id) throw unknownId(id, [problem.id])
    return { cases: [problem], single: true }
  }
  if (!Array.isArray(list)) throw new Refusal('field-type', 'cases', list, 'is no list; give a list of cases')
  const wanted = list
    .map((item, i) => ({ item, field: `cases.${i}`, id: (item as { id?: unknown } | null)?.id }))
    .filter(one => id === undefined || one.id === id)
  if (id !== undefined && wanted.length === 0)
    throw unknownId(
      id,
      list.map(item => item?.id),
    )
  return { cases: wanted.map(one => readCase(one.item, one.field)), single: id !== undefined }
}

function unknownId(id: string, known: unknown[]): Refusal {
  return new Refusal('id-unknown', '--id', id, `no case is called ${id}; there is ${known.join(', ')}`)
}

function answer(problem: Problem) {
  const started = performance.now()
  const offers = promise(problem)
  const seconds = Number(((performance.now() - started) / 1000).toFixed(6))
  return {
    id: problem.id ?? null,
    offers: {
      soonest: told(problem, offers.soonest),
      leastBlocked: told(problem, offers.leastBlocked),
      askedDay: told(problem, offers.askedDay),
    },
    seconds,
  }
}

function told(problem: Problem, offer: Offer | NoOffer) {
  const reasons = explain(problem, offer).map(reason => ({ ...reason, text: reasonText(reason, plainWords) }))
  if (!offer.feasible) return { feasible: false, proven: true, reasons }
  const { handover, blockedOpen, moves, dropOff, plan, closedCure } = offer
  return {
    objective: { handover, blockedOpen, moves, dropOff },
    proven: true,
    plan: { [problem.newJob.id]: plan },
    stays: offer.stays,
    closedCure,
    reasons,
  }
}

try {
  const { file, id } = readFlags(process.argv.slice(2))
  const { cases, single } = readCases(readJson(file), id)
  const answers = cases.map(problem => JSON.stringify(answer(problem)))
  process.stdout.write(single ? `${answers[0]}\n` : `[\n${answers.join(',\n')}\n]\n`)
} catch (error) {
  if (!(error instanceof Refusal)) throw error
  process.stderr.write(`solve: ${error.field}: ${error.message.replaceAll('\n', ' ')}\n`)
  process.exitCode = 2
}
