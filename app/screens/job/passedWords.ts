import type { CureMarks } from '../../../main/api/views.ts'

/** How far a coat is, as the moments of its profile it has passed and the one that comes next; never as a percentage. */
export function passedWords(marks: CureMarks, nowAt: number, when: (at: number) => string): string {
  const moments = [
    ['safe to touch', marks.tackFreeAt],
    ['earliest pick-up', marks.safeAt],
    ['recommended pick-up', marks.advisedAt],
    ['may get wet', marks.keepDryEndsAt],
    ['first wash', marks.firstWashAt],
    ['full cure at the latest', marks.fullCureAt],
  ] as const
  const passed = moments.filter(([, at]) => at <= nowAt).map(([name]) => name)
  const next = moments.filter(([, at]) => at > nowAt).sort(([, a], [, b]) => a - b)[0]
  return [
    passed.length === 0 ? 'No milestone passed yet.' : `Passed: ${passed.join(', ')}.`,
    next ? `Next: ${next[0]}, ${when(next[1])}.` : '',
  ]
    .filter(Boolean)
    .join(' ')
}
