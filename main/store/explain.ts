import { Refusal } from '../domain/refusal.ts'
import { Prisma } from './generated/client.ts'

/**
 * What a caller can bring about on the database, by Prisma's own codes, and what to tell them. Services check what they
 * can word better; this is the net below them, so that a row that is gone is never "something went wrong".
 */
const words: Record<string, { code: string; message: string }> = {
  P2001: { code: 'missing', message: 'What this is about is not here: look again, then repeat it.' },
  P2003: {
    code: 'missing',
    message: 'Something this points to is not here: look again, then choose it anew.',
  },
  P2018: {
    code: 'missing',
    message: 'Something this points to is not here: look again, then choose it anew.',
  },
  P2025: { code: 'missing', message: 'What this is about is not here: look again, then repeat it.' },
  P2002: { code: 'taken', message: 'There is one like this already: look at what is there first.' },
  P2028: { code: 'busy', message: 'The app is busy with another change: try again in a moment.' },
  P1008: { code: 'busy', message: 'The app is busy with another change: try again in a moment.' },
}

/** The refusal for what the database would not do, where a caller brought it about; any other error as it is. */
export function explain(error: unknown): unknown {
  if (!(error instanceof Prisma.PrismaClientKnownRequestError)) return error
  const known = words[error.code]
  return known ? new Refusal(known.code, '', null, known.message) : error
}
