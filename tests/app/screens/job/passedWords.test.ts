import { expect, test } from 'vitest'
import { passedWords } from '../../../../app/screens/job/passedWords.ts'
import type { CureMarks } from '../../../../main/api/views.ts'

const marks = {
  tackFreeAt: 60,
  safeAt: 240,
  advisedAt: 720,
  keepDryEndsAt: 480,
  firstWashAt: 10_000,
  fullCureAt: 14_000,
} as CureMarks
const words = (nowAt: number) => passedWords(marks, nowAt, at => `at ${at}`)

test.each([
  [0, 'No milestone passed yet. Next: safe to touch, at 60.'],
  [60, 'Passed: safe to touch. Next: earliest pick-up, at 240.'],
  // Whichever comes first: the car may get wet before its handover is advised.
  [300, 'Passed: safe to touch, earliest pick-up. Next: may get wet, at 480.'],
  [
    14_000,
    'Passed: safe to touch, earliest pick-up, recommended pick-up, may get wet, first wash, full cure at the latest.',
  ],
])('At minute %i a coat is told by its milestones, not by a percentage', (nowAt, told) => {
  expect(words(nowAt)).toBe(told)
  expect(words(nowAt)).not.toContain('%')
})
