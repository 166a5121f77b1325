import { statSync } from 'node:fs'
import { say } from '../domain/language/index.ts'
import { Refusal } from '../domain/refusal.ts'

/**
 * Holds on to which file a database is: a removed or unplugged file goes on taking writes that nobody will ever read.
 * What is given back refuses once the path does not lead to that file any more.
 */
export function watchFile(file: string): () => void {
  const identity = () => {
    const { dev, ino } = statSync(file, { bigint: true })
    return `${dev} ${ino}`
  }
  const opened = identity()
  return () => {
    let now: string | null
    try {
      now = identity()
    } catch {
      now = null
    }
    if (now === opened) return
    throw new Refusal(
      'database-gone',
      'database',
      file,
      now === null
        ? say(
            'The database {file} is not there any more: its folder was moved, deleted or unplugged. Nothing of this was saved. Close Lustrum, bring the folder back or plug the disk in, and start it again; if it is lost, start it to restore a copy.',
            { file },
          )
        : say(
            'Another file has taken the place of the database {file} while Lustrum was running. Nothing of this was saved. Close Lustrum and start it again: it then opens the file that is there now.',
            { file },
          ),
    )
  }
}
