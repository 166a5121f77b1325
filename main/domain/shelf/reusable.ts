/**
 * Pieces that are washed and used again: pads, towels. A set goes through its grades from the finest work to the
 * coarsest; after so many washes, or by sight, it is demoted, and after the last grade retired. Nothing that was done is
 * refused: a set washed once too often is only due.
 */
import { say } from '../language/index.ts'
import { refuse } from '../refusal.ts'

/** What a set is good for, and for how many washes. The best comes first. */
export interface Grade {
  readonly name: string
  readonly washes: number
}

export interface ReusableSet {
  /** Pieces still in use; none: the set is retired. */
  readonly pieces: number
  readonly retired: number
  /** Its place among the grades. */
  readonly grade: number
  readonly gradeWashes: number
  readonly washes: number
}

export type SetAct =
  | { readonly kind: 'washed' }
  | { readonly kind: 'demoted' }
  | { readonly kind: 'retired'; readonly pieces: number }

export type SetDue = { readonly act: 'demote'; readonly to: string } | { readonly act: 'retire' }

/** Refuses grades nobody could follow. */
export function checkGrades(grades: readonly Grade[]): void {
  const names = grades.map(grade => grade.name.trim().toLowerCase())
  if (grades.length === 0)
    refuse('grades-missing', { grades: 0 }, say('Say what the pieces are used for, the finest first.'))
  for (const [i, { name, washes }] of grades.entries()) {
    if (!name.trim() || names.indexOf(name.trim().toLowerCase()) !== i)
      refuse('grade-bad', { [`grades.${i}.name`]: name }, say('Give each use a name of its own.'))
    // Nobody knows how often a good towel may be washed; a thousand is three years of days (common practice, no source).
    if (!(Number.isInteger(washes) && washes >= 1 && washes <= 1_000))
      refuse(
        'washes-bad',
        { [`grades.${i}.washes`]: washes },
        say('{washes} is not a number of washes; give 1 to 1,000.', { washes }),
      )
  }
}

/** The set after one act. */
export function setAfter<Of extends ReusableSet>(set: Of, act: SetAct, grades: readonly Grade[]): Of {
  if (set.pieces === 0)
    refuse('set-retired', { pieces: 0 }, say('This set is retired; take new pieces into use.'))
  if (act.kind === 'washed') return { ...set, washes: set.washes + 1, gradeWashes: set.gradeWashes + 1 }
  if (act.kind === 'demoted') {
    if (set.grade + 1 >= grades.length)
      refuse(
        'last-grade',
        { grade: set.grade },
        say('There is no coarser use for this set; retire it instead.'),
      )
    return { ...set, grade: set.grade + 1, gradeWashes: 0 }
  }
  const { pieces } = act
  if (!(Number.isInteger(pieces) && pieces >= 1 && pieces <= set.pieces))
    refuse(
      'pieces-bad',
      { pieces },
      say('The set has {pieces} in use; give how many of them go, 1 or more.', { pieces: set.pieces }),
    )
  return { ...set, pieces: set.pieces - pieces, retired: set.retired + pieces }
}

/** What the washes of a set propose; null while its grade is good for more. Sight may come first. */
export function setDue(set: ReusableSet, grades: readonly Grade[]): SetDue | null {
  const grade = grades[Math.min(set.grade, grades.length - 1)]
  if (set.pieces === 0 || !grade || set.gradeWashes < grade.washes) return null
  const next = grades[set.grade + 1]
  return next ? { act: 'demote', to: next.name } : { act: 'retire' }
}
