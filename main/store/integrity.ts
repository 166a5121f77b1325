import { existsSync } from 'node:fs'
import { dirname } from 'node:path'
import { say } from '../domain/language/index.ts'
import { Refusal } from '../domain/refusal.ts'
import { inspect } from './backup/inspect.ts'
import { copiesFolder } from './migrate.ts'
import { oneLine } from './oneLine.ts'

/**
 * Reads the whole database and every link between its rows. Refuses a file that is damaged, or none of SQLite's;
 * a missing file is fine, it will be made.
 */
export function checkIntegrity(file: string): void {
  if (!existsSync(file)) return
  const { fault } = inPlainWords(file, () => inspect(file))
  if (fault !== null) throw damaged(file, fault)
}

/** Does `work` on the database file; what SQLite says of a file it cannot read becomes words with a way on. */
export function inPlainWords<T>(file: string, work: () => T): T {
  try {
    return work()
  } catch (error) {
    throw toRefusal(file, error)
  }
}

/** The refusal for what SQLite or the migration engine said of the file, or the error itself where it is another. */
export function toRefusal(file: string, error: unknown): unknown {
  if (error instanceof Refusal || !(error instanceof Error)) return error
  const code = 'code' in error ? String(error.code) : ''
  if (/^SQLITE_(NOTADB|CORRUPT)/.test(code) || /malformed|not a database/i.test(error.message))
    return damaged(file, error.message)
  if (/^(SQLITE_(CANTOPEN|READONLY|PERM|IOERR|FULL)|ENOSPC|EDQUOT|EFBIG|EACCES|EPERM|EROFS|EIO)/.test(code))
    return new Refusal(
      'database-unreachable',
      'database',
      file,
      say(
        "The database {file} cannot be opened for writing ({fault}): look at the folder's rights and free space.",
        { file, fault: oneLine(error.message) },
      ),
    )
  if (/^SQLITE_(BUSY|LOCKED)/.test(code))
    return new Refusal(
      'database-busy',
      'database',
      file,
      say(
        'Another program holds the database {file} ({fault}): close that program, then start Lustrum again.',
        { file, fault: oneLine(error.message) },
      ),
    )
  return error
}

function damaged(file: string, finding: string): Refusal {
  return new Refusal(
    'database-damaged',
    'database',
    file,
    say(
      'The database {file} is damaged ({finding}). Nothing was changed. Put a copy of it back in its place: copies made before updates lie in {file2}; or open another data folder with --data.',
      { file, finding: oneLine(finding), file2: copiesFolder(dirname(file)) },
    ),
  )
}
