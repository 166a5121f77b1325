import type { CureMarks } from '../../../main/api/views.ts'
import { say } from '../../../main/domain/language/index.ts'

/** How far a coat is, as the moments of its profile it has passed and the one that comes next; never as a percentage. */
export function passedWords(marks: CureMarks, nowAt: number, when: (at: number) => string): string {
  const moments = [
    [say('safe to touch'), marks.tackFreeAt],
    [say('earliest pick-up'), marks.safeAt],
    [say('recommended pick-up'), marks.advisedAt],
    [say('may get wet'), marks.keepDryEndsAt],
    [say('first wash'), marks.firstWashAt],
    [say('full cure at the latest'), marks.fullCureAt],
  ] as const
  const passed = moments.filter(([, at]) => at <= nowAt).map(([name]) => name)
  const next = moments.filter(([, at]) => at > nowAt).sort(([, a], [, b]) => a - b)[0]
  return [
    passed.length === 0
      ? say('No milestone passed yet.')
      : say('Passed: {passed}.', { passed: passed.join(', ') }),
    next ? say('Next: {next}, {next2}.', { next: next[0], next2: when(next[1]) }) : '',
  ]
    .filter(Boolean)
    .join(' ')
}
