import fc from 'fast-check'
import { expect, test } from 'vitest'
import {
  checkGrades,
  type ReusableSet,
  type SetAct,
  setAfter,
  setDue,
} from '../../../main/domain/shelf/reusable.ts'

const fresh = (pieces: number): ReusableSet => ({ pieces, retired: 0, grade: 0, gradeWashes: 0, washes: 0 })
const grades = fc
  .array(fc.integer({ min: 1, max: 12 }), { minLength: 1, maxLength: 4 })
  .map(list => list.map((washes, i) => ({ name: `use ${i}`, washes })))
const act: fc.Arbitrary<SetAct> = fc.oneof(
  fc.constant({ kind: 'washed' as const }),
  fc.constant({ kind: 'demoted' as const }),
  fc.integer({ min: 1, max: 3 }).map(pieces => ({ kind: 'retired' as const, pieces })),
)

test('Pieces are in use or retired, washes only add up, and no grade comes back', () => {
  fc.assert(
    fc.property(
      grades,
      fc.integer({ min: 1, max: 20 }),
      fc.array(act, { maxLength: 40 }),
      (ladder, pieces, acts) => {
        let set = fresh(pieces)
        for (const each of acts) {
          let next = set
          try {
            next = setAfter(set, each, ladder)
          } catch {
            continue
          }
          expect(next.pieces + next.retired).toBe(pieces)
          expect(next.pieces).toBeGreaterThanOrEqual(0)
          expect(next.washes - set.washes).toBe(each.kind === 'washed' ? 1 : 0)
          expect(next.grade).toBeGreaterThanOrEqual(set.grade)
          expect(next.grade).toBeLessThan(ladder.length)
          set = next
        }
      },
    ),
  )
})

test('Who follows every proposal washes a set as often as its grades allow, and then retires it', () => {
  fc.assert(
    fc.property(grades, ladder => {
      let set = fresh(6)
      while (set.pieces > 0) {
        const due = setDue(set, ladder)
        const next: SetAct =
          due === null
            ? { kind: 'washed' }
            : due.act === 'demote'
              ? { kind: 'demoted' }
              : { kind: 'retired', pieces: set.pieces }
        set = setAfter(set, next, ladder)
      }
      expect(set.washes).toBe(ladder.reduce((sum, grade) => sum + grade.washes, 0))
      expect(set.grade).toBe(ladder.length - 1)
    }),
  )
})

test('By sight a set is demoted early, but not below its last grade, and retired once', () => {
  const ladder = [
    { name: 'Finish', washes: 10 },
    { name: 'Wheels', washes: 5 },
  ]
  const wheels = setAfter(setAfter(fresh(6), { kind: 'washed' }, ladder), { kind: 'demoted' }, ladder)
  expect(wheels).toEqual({ pieces: 6, retired: 0, grade: 1, gradeWashes: 0, washes: 1 })
  expect(() => setAfter(wheels, { kind: 'demoted' }, ladder)).toThrow(
    expect.objectContaining({ code: 'last-grade' }),
  )
  expect(() => setAfter(wheels, { kind: 'retired', pieces: 7 }, ladder)).toThrow(
    expect.objectContaining({ field: 'pieces' }),
  )
  const gone = setAfter(wheels, { kind: 'retired', pieces: 6 }, ladder)
  expect(() => setAfter(gone, { kind: 'washed' }, ladder)).toThrow(
    expect.objectContaining({ code: 'set-retired' }),
  )
  expect(setDue(gone, ladder)).toBeNull()
})

test.each([
  [[], 'grades'],
  [[{ name: ' ', washes: 3 }], 'grades.0.name'],
  [
    [
      { name: 'A', washes: 3 },
      { name: 'a', washes: 3 },
    ],
    'grades.1.name',
  ],
  [[{ name: 'A', washes: 0 }], 'grades.0.washes'],
])('%j is refused by its field', (list, field) => {
  expect(() => checkGrades(list)).toThrow(expect.objectContaining({ field }))
})
