import { existsSync, readFileSync } from 'node:fs'
import { say } from '../domain/language/index.ts'
import { Refusal } from '../domain/refusal.ts'
import { writeWhole } from './wholeFile.ts'

/**
 * What must be kept but not in the database, where every copy of it would carry it along: passwords. They lie in a file
 * of their own beside it that only this user may read.
 */
export interface Secrets {
  get(name: string): string | null
  /** Null forgets it. */
  set(name: string, value: string | null): void
}

/** The secrets in this file; it is made when the first one is set. */
export function openSecrets(file: string): Secrets {
  const read = (): Record<string, string> => {
    if (!existsSync(file)) return {}
    try {
      return JSON.parse(readFileSync(file, 'utf8')) as Record<string, string>
    } catch (error) {
      throw new Refusal(
        'secrets-unreadable',
        'secrets',
        file,
        say('The file of passwords {file} cannot be read ({fault}): remove it and enter them again.', {
          file,
          fault: (error as Error).message,
        }),
      )
    }
  }
  return {
    get: name => read()[name] ?? null,
    set(name, value) {
      const all = read()
      if (value === null) delete all[name]
      else all[name] = value
      writeWhole(file, JSON.stringify(all))
    },
  }
}
