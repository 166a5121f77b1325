import { say } from '../domain/language/index.ts'
import { Refusal } from '../domain/refusal.ts'
import { oneLine } from './oneLine.ts'

const said: [codes: RegExp, words: (path: string) => string][] = [
  [
    /^(ENOSPC|EDQUOT|EFBIG|SQLITE_FULL)/,
    path => say('There is no room left for {path}: free some space on that disk.', { path }),
  ],
  [
    /^(EACCES|EPERM|EROFS|SQLITE_READONLY|SQLITE_PERM|SQLITE_AUTH)/,
    path => say("{path} cannot be written: look at the folder's rights.", { path }),
  ],
  [
    /^(ENOENT|ENOTDIR|ENODEV|ENXIO|ESTALE|EHOSTDOWN|EHOSTUNREACH|ENOTCONN|ETIMEDOUT|SQLITE_CANTOPEN)/,
    path => say('{path} is not there: plug the disk in, or connect to it again.', { path }),
  ],
  [
    /^(EIO|SQLITE_IOERR)/,
    path => say('The disk failed at {path}: check the disk before anything else.', { path }),
  ],
  [
    /^(EBUSY|ETXTBSY|SQLITE_BUSY|SQLITE_LOCKED)/,
    path => say('Another program holds {path}: close that program.', { path }),
  ],
]

/** What the disk or SQLite said of a path as a refusal with a way out; an error of another kind as it is. */
export function diskRefusal(error: unknown, path: string): unknown {
  if (error instanceof Refusal || !(error instanceof Error) || !('code' in error)) return error
  const code = String(error.code)
  const words = said.find(([codes]) => codes.test(code))?.[1]
  return words
    ? new Refusal('disk', 'path', path, sentence(`${words(path)} (${oneLine(error.message)})`))
    : error
}

function sentence(words: string): string {
  return words.charAt(0).toUpperCase() + words.slice(1)
}

/** Does `work`, which has to do with `path`; what the disk says of it becomes words. */
export async function onDisk<T>(path: string, work: () => Promise<T>): Promise<T> {
  try {
    return await work()
  } catch (error) {
    throw diskRefusal(error, path)
  }
}
