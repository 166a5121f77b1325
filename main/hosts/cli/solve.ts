import { readFileSync } from 'node:fs'
import { parseArgs } from 'node:util'
import { Refusal } from '../../domain/refusal.ts'
import { answerInstance, answerPlan } from './answerPlan.ts'
import { answerPromise } from './answerPromise.ts'

/**
 * `npm run -s solve -- CASE.json` and a question: the answer to a case, or to a file of cases, as JSON on standard
 * output. Exit status 2 and one line on standard error for anything that cannot be read.
 */
const usage =
  'use: npm run -s solve -- CASE.json [--id ID] --promise, or CASE.json [--id ID] --plan [--limit SECONDS], or INSTANCES.json --instance NAME --variant classic|noWait|blockingSwap|blockingNoSwap [--limit SECONDS]'

/** The most seconds one case may take. */
const mostSeconds = 86_400

interface Flags {
  readonly file: string
  readonly id: string | undefined
  readonly instance: string | undefined
  readonly variant: string | undefined
  readonly question: 'promise' | 'plan' | 'instance'
  readonly limit: number
}

function readFlags(args: string[]): Flags {
  const { values, positionals } = parseFlags(args)
  const [file, ...more] = positionals
  if (file === undefined || more.length > 0)
    throw new Refusal('bad-arguments', 'CASE.json', file, `give exactly one case file; ${usage}`)
  const questions = (['promise', 'plan', 'instance'] as const).filter(name => values[name])
  const [question] = questions
  if (!question)
    throw new Refusal(
      'no-question',
      '--promise',
      undefined,
      `is missing, and --plan and --instance too, so there is nothing to solve; ${usage}`,
    )
  if (questions.length > 1)
    throw new Refusal(
      'two-questions',
      `--${questions[1]}`,
      true,
      `cannot be asked with --${question}; ${usage}`,
    )
  const limit = Number(values.limit ?? 60)
  if (!(limit > 0 && limit <= mostSeconds))
    throw new Refusal(
      'bad-limit',
      '--limit',
      values.limit,
      `give seconds, more than 0, at most ${mostSeconds}`,
    )
  return { file, question, limit, id: values.id, instance: values.instance, variant: values.variant }
}

function parseFlags(args: string[]) {
  try {
    return parseArgs({
      args,
      allowPositionals: true,
      options: {
        id: { type: 'string' },
        promise: { type: 'boolean' },
        plan: { type: 'boolean' },
        instance: { type: 'string' },
        variant: { type: 'string' },
        limit: { type: 'string' },
      },
    })
  } catch (error) {
    const { message } = error as Error
    throw new Refusal('bad-flag', 'arguments', args, `${message.split(/[.\n]/)[0]}; ${usage}`)
  }
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

/** The cases asked for with the fields that name them, and whether the file was a single one. */
function pickCases(json: unknown, id: string | undefined) {
  const idOf = (item: unknown) => (item as { id?: unknown } | null)?.id
  const list = (json as { cases?: unknown } | null)?.cases
  if (list === undefined) {
    if (id !== undefined && idOf(json) !== id) throw unknownId(id, [idOf(json)])
    return { cases: [{ item: json, field: '' }], single: true }
  }
  if (!Array.isArray(list)) throw new Refusal('field-type', 'cases', list, 'is no list; give a list of cases')
  const cases = list
    .map((item, i) => ({ item: item as unknown, field: `cases.${i}` }))
    .filter(one => id === undefined || idOf(one.item) === id)
  if (id !== undefined && cases.length === 0) throw unknownId(id, list.map(idOf))
  return { cases, single: id !== undefined }
}

function unknownId(id: string, known: unknown[]): Refusal {
  return new Refusal('id-unknown', '--id', id, `no case is called ${id}; there is ${known.join(', ')}`)
}

function answer(flags: Flags): string {
  const json = readJson(flags.file)
  if (flags.question === 'instance') return `${JSON.stringify(answerInstance(json, flags))}\n`
  const { cases, single } = pickCases(json, flags.id)
  // All are read before the first is solved, so that a malformed one is told at once.
  const solve = cases.map(({ item, field }) =>
    flags.question === 'plan' ? answerPlan(item, field, flags.limit) : answerPromise(item, field),
  )
  const answers = solve.map(one => JSON.stringify(one()))
  return single ? `${answers[0]}\n` : `[\n${answers.join(',\n')}\n]\n`
}

try {
  process.stdout.write(answer(readFlags(process.argv.slice(2))))
} catch (error) {
  if (!(error instanceof Refusal)) throw error
  process.stderr.write(`solve: ${error.field}: ${error.message.replaceAll('\n', ' ')}\n`)
  process.exitCode = 2
}
