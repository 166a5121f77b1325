import { expect, test } from 'vitest'
import { type PaintStep, toolCautions } from '../../../main/domain/paint/index.ts'

// All of it common practice, no source: the tool's and the product's own instructions decide.
const step = (stage: PaintStep['stage'], productKind: PaintStep['productKind'] = null) => ({
  stage,
  productKind,
})
const wash = step('prepare', 'wash')
const polish = step('correct', 'polish')
const coat = step('coat', 'coating')

test('A machine on the paint is warned of once, however many steps take it; a wash and a wipe have no tools', () => {
  const said = toolCautions([wash, polish])
  for (const words of ['before a pad is changed', '15 to 20°', 'Tape edges', 'smaller machine'])
    expect(said.join(' ')).toContain(words)
  expect(said.at(-1)).toContain('own instructions decide')
  expect(toolCautions([polish, polish, step('test')])).toEqual(said)
  expect(toolCautions([wash, step('wipe', 'wipe')])).toEqual([])
  // A primer polish in a step that is not called a correction.
  expect(toolCautions([step('wipe', 'polish')])).toEqual(said)
})

test('Laying is warned of its lamps, and with a polish before it of what abrades later', () => {
  const alone = toolCautions([wash, coat])
  expect(alone).toHaveLength(2)
  expect(alone[0]).toMatch(/Lamps and heaters: never near solvent vapour/)
  expect(toolCautions([wash, polish]).join(' ')).not.toMatch(/Lamps|abrasive-free/)
  expect(toolCautions([wash, polish, coat]).join(' ')).toMatch(/abrasive-free care.*Lamps and heaters/)
})
