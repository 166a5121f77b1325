import { execFileSync } from 'node:child_process'
import { existsSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'

export const root = fileURLToPath(new URL('../..', import.meta.url))

/** The paths git keeps, as they lie in the folder now. */
export function trackedFiles(): string[] {
  const list = execFileSync('git', ['ls-files', '-z'], { cwd: root, encoding: 'utf8' })
  return list.split('\0').filter(path => path !== '' && existsSync(join(root, path)))
}

export function read(path: string): string {
  return readFileSync(join(root, path), 'utf8')
}
