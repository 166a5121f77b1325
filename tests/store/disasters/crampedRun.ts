import { spawnSync } from 'node:child_process'
import { fileURLToPath } from 'node:url'

const program = fileURLToPath(new URL('./cramped.ts', import.meta.url))

/** Windows has no such limit. */
export const canBeCramped = process.platform !== 'win32'

/** Does something with the database while no file may grow past so many kilobytes: acts answered, and the last words. */
export function runCramped(
  doing: 'write' | 'fileAway' | 'copy' | 'migrate',
  file: string,
  kilobytes: number,
): { answered: number; words: string } {
  // POSIX: `ulimit -f` counts blocks of 512 bytes.
  const { stdout } = spawnSync(
    'sh',
    ['-c', `ulimit -f ${kilobytes * 2}; exec "$0" "$@"`, process.execPath, program, doing, file],
    { encoding: 'utf8', timeout: 120_000 },
  )
  const lines = stdout.trim().split('\n')
  return { answered: lines.length - 1, words: lines.at(-1) ?? '' }
}
