import { expect, it } from 'vitest'
import { commonPracticeProfile, milestoneAges } from '../../../main/domain/cure/index.ts'
import { stepRows, timesOf } from '../../../main/domain/floor/index.ts'

const work = {
  kind: 'work',
  name: 'Layer',
  stage: 'coat',
  needs: 'clean',
  skill: 'coat',
  crew: 2,
  split: true,
  sameBay: true,
  waitMin: 10,
  waitMax: 240,
  minutes: 90,
  productId: 'two',
} as const
const hold = {
  kind: 'hold',
  name: 'Cure',
  stage: 'cure',
  needs: 'cure',
  minutes: 60,
  moveAfter: 30,
  productId: 'two',
} as const
const plan = {
  steps: [
    { bay: 'bay 3', start: 100, end: 190, crew: ['jo', 'sal'] },
    { bay: 'bay 3', start: 190, end: 250, crew: [], moved: { bay: 'bay 4', at: 220 } },
  ],
  handover: 700,
}

it('keeps what each step is and where it was placed', () => {
  const [layer, cure] = stepRows([work, hold], plan)
  expect(layer).toEqual({
    position: 0,
    kind: 'work',
    name: 'Layer',
    stage: 'coat',
    needs: 'clean',
    skill: 'coat',
    crewCount: 2,
    splittable: true,
    sameBay: true,
    waitMin: 10,
    waitMax: 240,
    minutes: 90,
    moveAfterMin: null,
    missed: null,
    missedMin: null,
    productId: 'two',
    bayId: 'bay 3',
    plannedAt: 100,
    plannedEndAt: 190,
    startAt: 100,
    endAt: 190,
    movedToBayId: null,
    movedAt: null,
    crew: {
      create: [
        { crewId: 'jo', helps: false },
        { crewId: 'sal', helps: false },
      ],
    },
  })
  expect(cure).toMatchObject({
    position: 1,
    kind: 'hold',
    skill: null,
    crewCount: 0,
    splittable: false,
    sameBay: false,
    waitMin: null,
    waitMax: null,
    moveAfterMin: 30,
    movedToBayId: 'bay 4',
    movedAt: 220,
    crew: { create: [] },
  })
})

it('promises the handover that was planned, and knows from when the profile lets the car go', () => {
  const cureProfile = commonPracticeProfile()
  const two = { id: 'two', name: 'Ovrel Two', kind: 'coating', cureProfile, caution: null } as const
  const times = timesOf([work, hold], plan, new Map([['two', two]]), 'covered')
  const { handoverSafe, handoverAdvised } = milestoneAges(cureProfile)
  expect(handoverSafe).toBeGreaterThan(0)
  expect(times).toEqual({
    dropOffAt: 100,
    plannedHandoverAt: 700,
    handoverAt: 700,
    // From the end of the layer, not of the hold.
    safeAt: 190 + (handoverSafe ?? 0),
    advisedAt: 190 + (handoverAdvised ?? 0),
  })
  expect(timesOf([{ ...work, productId: null }, hold], plan, new Map(), 'dry')).toMatchObject({
    safeAt: 190,
    advisedAt: 190,
  })
})
