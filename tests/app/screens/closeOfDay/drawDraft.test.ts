import { describe, expect, it } from 'vitest'
import { drawInput, proposedDraft, tapped } from '../../../../app/screens/closeOfDay/drawDraft.ts'
import type { DrawToConfirm } from '../../../../main/api/views.ts'

const draw: DrawToConfirm = {
  productId: 'coat',
  productName: 'Coat',
  unit: 'ml',
  expected: 30,
  spread: 4,
  proposed: 30,
  tap: 2.5,
  lotId: 'open',
  lotWords: 'no. 1',
  lots: [],
  canWeigh: true,
  weighWords: null,
  look: null,
}

describe('what the crew says of a draw', () => {
  it('is the proposal where nothing is touched', () => {
    expect(drawInput(draw, proposedDraft(draw))).toEqual({
      productId: 'coat',
      lotId: 'open',
      how: 'proposed',
      amount: 30,
    })
  })

  it('is a correction after a tap, and the proposal again after one back', () => {
    const more = tapped(proposedDraft(draw), draw, 1)
    expect(drawInput(draw, more)).toMatchObject({ how: 'corrected', amount: 32.5 })
    expect(drawInput(draw, tapped(more, draw, -1))).toMatchObject({ how: 'proposed', amount: 30 })
  })

  it('never goes under nothing', () => {
    const little = { ...proposedDraft(draw), amount: 1 }
    expect(tapped(little, draw, -1).amount).toBe(0)
  })

  it('is a weight and no amount once the bottle was weighed', () => {
    const weighed = { ...proposedDraft(draw), weighing: true, grossG: 88.4 }
    expect(drawInput(draw, weighed)).toEqual({
      productId: 'coat',
      lotId: 'open',
      how: 'weighed',
      weighed: { grossG: 88.4 },
    })
  })

  it('names its reason only where the bottle is taken out of turn', () => {
    const other = { ...proposedDraft(draw), reason: 'the open one had dust in it' }
    expect(drawInput(draw, other)).not.toHaveProperty('reason')
    expect(drawInput(draw, { ...other, lotId: 'sealed' })).toMatchObject({
      lotId: 'sealed',
      reason: 'the open one had dust in it',
    })
  })

  it('says why two batches go onto one car only where somebody did', () => {
    const mixed = { ...proposedDraft(draw), mixing: ' tried on a panel first ' }
    expect(drawInput(draw, mixed)).toMatchObject({ how: 'proposed', mixing: 'tried on a panel first' })
  })
})
