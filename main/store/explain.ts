import { say, word } from '../domain/language/index.ts'
import { Refusal } from '../domain/refusal.ts'
import { diskRefusal } from './diskWords.ts'
import { Prisma } from './generated/client.ts'
import { toRefusal } from './integrity.ts'

/**
 * What a caller can bring about on the database, by Prisma's own codes, and what to tell them. Services check what they
 * can word better; this is the net below them, so that a row that is gone is never "something went wrong".
 */
const words: Record<string, { code: string; message: string }> = {
  P2001: { code: 'missing', message: word('What this is about is not here: look again, then repeat it.') },
  P2003: {
    code: 'missing',
    message: word('Something this points to is not here: look again, then choose it anew.'),
  },
  P2018: {
    code: 'missing',
    message: word('Something this points to is not here: look again, then choose it anew.'),
  },
  P2025: { code: 'missing', message: word('What this is about is not here: look again, then repeat it.') },
  P2002: { code: 'taken', message: word('There is one like this already: look at what is there first.') },
  P2028: { code: 'busy', message: word('The app is busy with another change: try again in a moment.') },
  P1008: { code: 'busy', message: word('The app is busy with another change: try again in a moment.') },
}

/** What SQLite itself said, where an error of Prisma's carries it. */
function sqliteError(error: unknown): (Error & { code: string }) | null {
  const { cause, meta } = error as { cause?: unknown; meta?: { driverAdapterError?: { cause?: unknown } } }
  const told = (meta?.driverAdapterError?.cause ?? cause) as
    | { originalCode?: string; originalMessage?: string }
    | undefined
  return told?.originalCode
    ? Object.assign(new Error(told.originalMessage ?? ''), { code: told.originalCode })
    : null
}

/**
 * The refusal for what the database `file` would not do, where a caller brought it about or the disk did; any other
 * error as it is.
 */
export function explain(error: unknown, file: string): unknown {
  if (!(error instanceof Error) || error instanceof Refusal) return error
  const told = sqliteError(error)
  // By its code alone: SQLite calls a text that is no JSON malformed too.
  const onDisk =
    told && (/^SQLITE_(NOTADB|CORRUPT)/.test(told.code) ? toRefusal(file, told) : diskRefusal(told, file))
  if (onDisk instanceof Refusal)
    return new Refusal(
      onDisk.code,
      onDisk.field,
      file,
      `${onDisk.message} ${say('Nothing of this was saved.')}`,
    )
  const known = error instanceof Prisma.PrismaClientKnownRequestError ? words[error.code] : undefined
  return known ? new Refusal(known.code, '', null, say(known.message)) : error
}
