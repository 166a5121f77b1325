/**
 * Which tables an answer was read from, so that a save can name the answers it made old. Noted as they are asked for, on the
 * client itself: nobody who writes a query has to say it, and none can be forgotten.
 */
import { AsyncLocalStorage } from 'node:async_hooks'
import { Prisma, type PrismaClient } from './generated/client.ts'

/** Tables by name. */
export type Reads = Set<string>

const collecting = new AsyncLocalStorage<Reads>()

/** Does something, and puts what it reads into `reads`. */
export function collectReads<T>(reads: Reads, work: () => T): T {
  return collecting.run(reads, work)
}

/** What is being answered rests on these too. */
export function noteReads(tables: Iterable<string>): void {
  const reads = collecting.getStore()
  if (reads) for (const table of tables) reads.add(table)
}

/** For each model, which of its fields lead to which other model. */
type Relations = ReadonlyMap<string, ReadonlyMap<string, string>>

interface RuntimeModels {
  readonly _runtimeDataModel: {
    readonly models: Readonly<
      Record<string, { fields: readonly { name: string; kind: string; type: string }[] }>
    >
  }
}

/** The same client for questions alone, which are noted. An act it would begin, or rows it would write, are refused. */
export function onlyAsking(client: PrismaClient): PrismaClient {
  const { models } = (client as unknown as RuntimeModels)._runtimeDataModel
  const relations: Relations = new Map(
    Object.entries(models).map(([name, { fields }]) => [
      name,
      new Map(fields.filter(field => field.kind === 'object').map(field => [field.name, field.type])),
    ]),
  )
  const modelOf = new Map([...relations.keys()].map(name => [name[0]!.toLowerCase() + name.slice(1), name]))
  const tables = new RegExp(`\\b(?:${[...relations.keys()].join('|')})\\b`, 'g')
  const delegates = new Map<string, object>()
  return new Proxy(client, {
    get(target, key) {
      const value = Reflect.get(target, key, target) as unknown
      if (typeof key !== 'string') return value
      const model = modelOf.get(key)
      if (model !== undefined) {
        const known = delegates.get(key) ?? notingModel(value as object, model, relations)
        delegates.set(key, known)
        return known
      }
      if (key === '$transaction') return refused(key)
      if (!key.startsWith('$queryRaw')) return typeof value === 'function' ? value.bind(target) : value
      return (query: unknown, ...values: unknown[]) => {
        noteReads(sqlOf(query, values).match(tables) ?? [])
        return (value as (...given: unknown[]) => unknown).call(target, query, ...values)
      }
    },
  })
}

const questions = /^(find|count|aggregate|groupBy)/

const refused = (name: string) => async () => {
  throw new Error(`This client is readonly: ${name} belongs into an act.`)
}

function notingModel(delegate: object, model: string, relations: Relations): object {
  return new Proxy(delegate, {
    get(target, key) {
      const value = Reflect.get(target, key, target) as unknown
      if (typeof value !== 'function' || typeof key !== 'string') return value
      if (!questions.test(key)) return refused(`${model}.${key}`)
      return (asked: unknown) => {
        const found: Reads = new Set([tableOf(model, asked)])
        follow(asked, model, relations, found)
        noteReads(found)
        return value.call(target, asked)
      }
    },
  })
}

/** With each act lines are added, but seldom lines about what one screen asks for. */
function tableOf(model: string, asked: unknown): string {
  const { entity } = (asked as { where?: { entity?: unknown } } | undefined)?.where ?? {}
  return model === 'AuditLine' && typeof entity === 'string' ? linesAbout(entity) : model
}

/** The audit lines about one kind of row. */
export const linesAbout = (entity: string): string => `AuditLine ${entity}`

/** The models that the include, the select, the filter or the order of a question lead to. */
function follow(asked: unknown, model: string, relations: Relations, found: Reads): void {
  if (typeof asked !== 'object' || asked === null) return
  if (Array.isArray(asked)) {
    // Values that something is compared with lead nowhere, however many.
    if (typeof asked[0] === 'object') for (const each of asked) follow(each, model, relations, found)
    return
  }
  for (const [key, value] of Object.entries(asked)) {
    if (value === undefined || value === false) continue
    const other = relations.get(model)?.get(key)
    if (other !== undefined) found.add(other)
    follow(value, other ?? model, relations, found)
  }
}

function sqlOf(query: unknown, values: readonly unknown[]): string {
  if (typeof query === 'string') return query
  return Array.isArray(query) ? Prisma.sql(query, ...values).sql : (query as { sql: string }).sql
}
