import { describe, expect, it } from 'vitest'
import { featureOf, featureText } from '../../../../app/screens/settings/featureText.ts'
import { speaking } from '../../../../main/services/desk/speaking.ts'

describe('what a bay offers', () => {
  it('is shown in the language of the shop and kept as it is everywhere', () => {
    speaking('de', () => {
      expect(featureText('lift')).toBe('Hebebühne')
      expect(featureOf('hebebühne ')).toBe('lift')
      expect(featureOf('Hebebühne')).toBe('lift')
    })
    expect(featureText('lift')).toBe('lift')
  })

  it('keeps a name of the shop as it was typed, whatever signs are in it', () => {
    speaking('de', () => {
      expect(featureText("{Grube} 'alt'")).toBe("{Grube} 'alt'")
      expect(featureOf('Grube')).toBe('Grube')
    })
  })
})
