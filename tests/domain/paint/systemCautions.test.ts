import { expect, it } from 'vitest'
import { systemCautions } from '../../../main/domain/paint/index.ts'

const polish = { stage: 'correct', productKind: null } as const
const wash = { stage: 'rinse', productKind: null } as const

it('single-stage paint colours the pad and has no clear coat to spare; an unknown one is tried on a spot first', () => {
  expect(systemCautions('single-stage', [wash, polish]).join(' ')).toMatch(
    /pad takes on its colour.*no clear coat/,
  )
  expect(systemCautions('unknown', [polish]).join(' ')).toMatch(/hidden spot/)
  expect(systemCautions('clear-coated', [polish])).toEqual([])
})

it('says nothing where nothing takes paint off', () => {
  expect(systemCautions('single-stage', [wash])).toEqual([])
  expect(systemCautions('unknown', [])).toEqual([])
})
