import { describe, expect, it } from 'vitest'
import { type DataSheet, sheetDoubts, silences } from '../../../main/domain/hazard/index.ts'

describe('a data sheet', () => {
  const full: DataSheet = {
    revisedOn: '2026-01-15',
    hazardCodes: ['H225', 'H319'],
    precautionaryCodes: ['P210', 'P280'],
    signalWord: 'Danger',
    protection: ['nitrile gloves'],
    storageGroup: 'flammable',
    storageMinC: 5,
    storageMaxC: 25,
    lifeAfterOpeningDays: 'unlimited',
    unNumber: 'UN1993',
  }

  it('that says everything leaves nothing to say; what it does not say is named', () => {
    expect(silences(full)).toEqual([])
    // "None" is something the sheet says; silence is not.
    expect(silences({ ...full, hazardCodes: [], signalWord: 'none', protection: [] })).toEqual([])
    expect(silences({ ...full, protection: null, storageMaxC: null }).map(({ field }) => field)).toEqual([
      'protection',
      'storageMaxC',
    ])
    expect(silences({ ...full, protection: null })[0]!.message).toMatch(/silent on protective equipment/)
  })

  it('that contradicts itself is doubted, never corrected', () => {
    expect(sheetDoubts(full, 'eu-clp')).toEqual([])
    expect(sheetDoubts({ ...full, signalWord: 'Warning' }, 'eu-clp')).toEqual([
      expect.stringContaining('Danger'),
    ])
    // The category decides H228's word, so that either is believed.
    for (const signalWord of ['Danger', 'Warning'] as const)
      expect(sheetDoubts({ ...full, hazardCodes: ['H228'], signalWord }, 'eu-clp')).toEqual([])
    expect(sheetDoubts({ ...full, storageMinC: 30, hazardCodes: ['H225', 'h225'] }, 'eu-clp')).toEqual([
      expect.stringContaining('30 °C'),
      'H225 is entered twice.',
    ])
    expect(sheetDoubts({ ...full, hazardCodes: ['H412'], signalWord: 'none' }, 'eu-clp')).toEqual([])
  })
})
