// Wording: CLP annexes III and IV, read in a public transcription; UN and OSHA spellings from memory.
import { describe, expect, it } from 'vitest'
import { precautionaryStatement } from '../../../main/domain/hazard/index.ts'

describe('precautionary statements', () => {
  // CLP annex IV part 2, joined statements as transcribed.
  it.each([
    ['P231+P232', 'Handle and store contents under inert gas/…. Protect from moisture.'],
    ['P301+P312', 'IF SWALLOWED: Call a POISON CENTER/doctor/… if you feel unwell.'],
    ['P302+P352', 'IF ON SKIN: Wash with plenty of water/…'],
    [
      'P303+P361+P353',
      'IF ON SKIN (or hair): Take off immediately all contaminated clothing. Rinse skin with water [or shower].',
    ],
    ['P308+P313', 'IF exposed or concerned: Get medical advice/attention.'],
    ['P333+P313', 'If skin irritation or rash occurs: Get medical advice/attention.'],
    ['P337+P313', 'If eye irritation persists: Get medical advice/attention.'],
    ['P342+P311', 'If experiencing respiratory symptoms: Call a POISON CENTER/doctor/…'],
    ['P361+P364', 'Take off immediately all contaminated clothing and wash it before reuse.'],
    ['P362+P364', 'Take off contaminated clothing and wash it before reuse.'],
    ['P370+P378', 'In case of fire: Use … to extinguish.'],
    ['P403+P233', 'Store in a well-ventilated place. Keep container tightly closed.'],
    ['P410+P412', 'Protect from sunlight. Do not expose to temperatures exceeding 50 °C/122 °F.'],
  ])('%s reads "%s"', (code, text) => {
    expect(precautionaryStatement(code)).toBe(text)
  })

  it('are spelled as the regime does', () => {
    expect(precautionaryStatement('P261', 'us-osha')).toBe('Avoid breathing dust/fume/gas/mist/vapors/spray.')
  })

  it('that do not exist are refused, alone or joined', () => {
    for (const code of ['P299', 'P301+P999', 'gloves', ''])
      expect(() => precautionaryStatement(code, 'eu-clp', 'precautions.0')).toThrow(
        expect.objectContaining({ code: 'precaution-code-unknown', field: 'precautions.0', value: code }),
      )
  })
})
