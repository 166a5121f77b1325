import { expect, test } from 'vitest'
import { questionsAt } from '../../../app/parts/screenQuestions.ts'
import { screens } from '../../../app/parts/screens.ts'

test('every screen of the bar, a job and a car answer three questions of their own', () => {
  const paths = [
    ...screens.map(({ to }) => to),
    '/plan/mend',
    '/jobs/1',
    '/cars/1',
    '/shelf/orders',
    '/settings/bays',
  ]
  const all = paths.map(path => questionsAt(path))
  for (const [i, questions] of all.entries()) expect(questions, paths[i]).toHaveLength(3)
  expect(new Set(all.flatMap(questions => questions.map(({ asks }) => asks))).size).toBe(13 * 3)
})

test('an address that is no screen has none', () => {
  expect(questionsAt('/welcome')).toEqual([])
})
