/** What comes in: lists from elsewhere, and how well the hands-on times learned from finished visits are promised. */
import { effortFigures } from './intake/effort.ts'
import { importFigures } from './intake/imports.ts'
import type { Figure } from './run.ts'

export async function* run(): AsyncGenerator<Figure> {
  yield* effortFigures()
  yield* importFigures()
}
