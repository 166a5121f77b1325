import { describe, expect, it } from 'vitest'
import { readThickness } from '../../../main/domain/intake/index.ts'

const plain = (text: string, unit: 'um' | 'mil' = 'um') =>
  readThickness(text, unit).map(({ panel, spot, um }) => `${panel} ${spot} ${um}`)

describe('pasted thickness', () => {
  it.each<[string, string[]]>([
    ['Bonnet 118 121 119', ['Bonnet 1 118', 'Bonnet 2 121', 'Bonnet 3 119']],
    ['left  WING, 118.5, 121', ['Left wing 1 118.5', 'Left wing 2 121']],
    ['Hood;118,5;121', ['Bonnet 1 118.5', 'Bonnet 2 121']],
    ['Boot lid\t118\t121', ['Boot lid 1 118', 'Boot lid 2 121']],
    ['panel;spot;um\r\nRoof;3;99\r\n"Right doors";1;101\r\n', ['Roof 3 99', 'Right doors 1 101']],
    ['Panel,µm\nRoof,99\n\nRoof,98', ['Roof 1 99', 'Roof 2 98']],
  ])('%j', (text, expected) => expect(plain(text)).toEqual(expected))

  // 25.4 µm to the mil, exact from the inch.
  it('in mils', () => expect(plain('Roof 4.7', 'mil')).toEqual(['Roof 1 119.4']))

  it('goes on counting the spots that are there', () => {
    expect(readThickness('Roof 99', 'um', [{ panel: 'Roof', spot: 4, um: 90 }])).toEqual([
      { panel: 'Roof', spot: 5, um: 99 },
    ])
  })

  it.each<[string, string, string]>([
    ['Roof 99\nSpoiler 4', 'panel-unknown', 'lines.2'],
    ['Roof', 'line-bad', 'lines.1'],
    ['Roof ninety', 'line-bad', 'lines.1'],
    ['118 121', 'line-bad', 'lines.1'],
    ['Roof 0', 'thickness-bad', 'lines.1'],
    ['Roof 99999', 'thickness-bad', 'lines.1'],
    ['panel;spot;um\nRoof;0;99', 'line-bad', 'lines.2'],
    ['panel;spot;um\nRoof;99', 'line-bad', 'lines.2'],
    ['', 'line-bad', 'lines'],
    [`Roof ${'9 '.repeat(501)}`, 'too-many', 'lines.1'],
  ])('refuses %j', (text, code, field) => {
    expect(() => readThickness(text, 'um')).toThrow(expect.objectContaining({ code, field }))
  })
})
