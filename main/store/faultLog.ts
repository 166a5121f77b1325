/**
 * What went wrong in the app, kept beside the database for whoever looks after it. No message of an error is kept, since
 * it may hold what somebody typed: only what the program itself brings, which is the kind of the error, its code, and
 * the places in the program it came through.
 */
import { appendFileSync, existsSync, readFileSync, renameSync, statSync } from 'node:fs'
import { join } from 'node:path'

export interface LoggedFault {
  /** Epoch minute. */
  at: number
  /** The kind of the error, and its code where it has one, as in `PrismaClientKnownRequestError P2010`. */
  kind: string
  /** What was asked, as the program names it; empty for what nobody asked. */
  asked: string
  /** The places in the program, innermost first, as in `main/services/job/cover.ts:20:7`. */
  places: string[]
}

/** So much fills two files before the older goes. */
const mostBytes = 128 * 1024
const mostPlaces = 8

export const faultFile = (dataDir: string) => join(dataDir, 'faults.log')
const olderFile = (dataDir: string) => join(dataDir, 'faults.older.log')

/** Notes a fault; never fails itself, for a full disk may be what went wrong. */
export function noteFault(dataDir: string, at: number, error: unknown, asked = ''): void {
  const file = faultFile(dataDir)
  try {
    if (existsSync(file) && statSync(file).size > mostBytes) renameSync(file, olderFile(dataDir))
    appendFileSync(file, `${JSON.stringify(withoutWords(error, { at, asked: codeLike(asked) }))}\n`, {
      mode: 0o600,
    })
  } catch {
    // The console has it all the same.
  }
}

/** The faults that are kept, newest first. */
export function keptFaults(dataDir: string, most: number): LoggedFault[] {
  return [olderFile(dataDir), faultFile(dataDir)]
    .flatMap(file => (existsSync(file) ? readFileSync(file, 'utf8').trim().split('\n') : []))
    .flatMap(line => {
      try {
        return [JSON.parse(line) as LoggedFault]
      } catch {
        // A line cut off with its process.
        return []
      }
    })
    .reverse()
    .slice(0, most)
}

function withoutWords(error: unknown, known: Pick<LoggedFault, 'at' | 'asked'>): LoggedFault {
  const { kinds, places } = chain(error)
  return { ...known, kind: kinds.join(' < '), places: places.slice(0, mostPlaces) }
}

/** The error and what brought it about: what wraps another says least. */
function chain(error: unknown, depth = 0): { kinds: string[]; places: string[] } {
  if (!(error instanceof Error)) return { kinds: [depth > 0 ? '' : typeof error].filter(Boolean), places: [] }
  const { code, cause } = error as { code?: unknown; cause?: unknown }
  const kind = [error.constructor.name, code].map(codeLike).filter(Boolean).join(' ')
  const inner = depth < 3 ? chain(cause, depth + 1) : { kinds: [], places: [] }
  return { kinds: [kind, ...inner.kinds], places: inner.places.length > 0 ? inner.places : placesIn(error) }
}

/** A name or a code of a program's; anything else, such as what somebody typed, becomes nothing. */
function codeLike(text: unknown): string {
  return typeof text === 'string' && /^[A-Za-z][A-Za-z0-9_.]{0,60}$/.test(text) ? text : ''
}

/** Files of the program with line and column; where the program lies would name who uses it. */
function placesIn({ stack = '', message }: Error): string[] {
  return stack
    .slice(stack.indexOf(message) + message.length)
    .split('\n')
    .flatMap(frame => {
      const place = /^\s+at .*?([^\s(]+\.[cm]?[jt]sx?:\d+:\d+)\)?$/.exec(frame)?.[1]
      return place
        ? [/^(?:.*\/)?((?:main|app|node_modules)\/.*)$/.exec(place)?.[1] ?? place.split(/[\\/]/).at(-1)!]
        : []
    })
}
