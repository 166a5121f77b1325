import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { hazardStatement, precautionaryStatement } from '../../main/domain/hazard/index.ts'
import { sayLine } from '../../main/domain/history/index.ts'
import { type Language, speakAs, teach } from '../../main/domain/language/index.ts'
import { reasonText } from '../../main/domain/schedule/index.ts'
import { amountWords } from '../../main/domain/shelf/index.ts'
import { laidOver, leftOutWords, panelsOver, scopeWords } from '../../main/domain/shop/index.ts'
import { ruleWords } from '../../main/domain/upkeep/index.ts'
import { listWords, orWords } from '../../main/domain/words.ts'

const folder = join(import.meta.dirname, '..', '..', 'assets', 'words', 'de')

let before: () => Language
beforeAll(() => {
  const files = readdirSync(folder).map(name => JSON.parse(readFileSync(join(folder, name), 'utf8')))
  teach('de', () => Object.assign({}, ...files))
  before = speakAs(() => 'de')
})
afterAll(() => void speakAs(before))

describe('in German', () => {
  it('joins what it lists', () => {
    expect(listWords(['Waschen', 'Polieren', 'Beschichten'])).toBe('Waschen, Polieren und Beschichten')
    expect(orWords(['Politur', 'Schleifpaste'])).toBe('Politur oder Schleifpaste')
  })

  it.each([
    ['FREQ=WEEKLY', 'jede Woche'],
    ['FREQ=MONTHLY;INTERVAL=6', 'alle 6 Monate'],
    ['FREQ=YEARLY;BYMONTH=10;BYMONTHDAY=-1', 'jedes Jahr im Oktober am letzten Tag'],
    ['FREQ=MONTHLY;BYMONTHDAY=1,-2', 'jeden Monat am 1. und vorletzten Tag'],
    ['FREQ=WEEKLY;COUNT=4', 'jede Woche, 4-mal'],
  ])('says the rule %s', (rule, words) => {
    expect(ruleWords(rule)).toBe(words)
  })

  // Wording: CLP (Regulation (EC) 1272/2008) annexes III and IV, German text, read in a public transcription.
  it.each([
    ['H225', 'Flüssigkeit und Dampf leicht entzündbar'],
    ['H334', 'Kann bei Einatmen Allergie, asthmaartige Symptome oder Atembeschwerden verursachen'],
    ['H301+H311', 'Giftig bei Verschlucken oder Hautkontakt'],
    ['H300+H310+H330', 'Lebensgefahr bei Verschlucken, Hautkontakt oder Einatmen'],
  ])('prints %s as the regulation words it', (code, text) => {
    expect(hazardStatement(code)).toBe(text)
  })

  it('joins precautionary statements', () => {
    expect(precautionaryStatement('P362+P364')).toBe(
      'Kontaminierte Kleidung ausziehen und vor erneutem Tragen waschen.',
    )
  })

  it.each([
    [1, 'niemand mit dem Können Polieren ist vor Dienstag 14:00 für Politur frei'],
    [2, 'kein Team von 2 mit dem Können Polieren ist vor Dienstag 14:00 für Politur frei'],
  ])('says why %i hands are not free', (minutes, text) => {
    const words = {
      minute: () => 'Dienstag 14:00',
      duration: String,
      bay: String,
      person: String,
      skill: () => 'Polieren',
      capability: String,
      step: () => 'Politur',
      job: String,
    }
    expect(reasonText({ code: 'crewBusy', step: 0, minutes, skill: 'polish', to: 5 }, words)).toBe(text)
  })

  it('tells the history', () => {
    const facts = { when: String, money: String, nameOf: () => undefined, unitOf: () => undefined }
    const line = (act: string, detail: unknown) =>
      sayLine({ act, entity: 'vehicle', entityId: 'v1', detail }, facts)
    expect(line('changed', { sizeClass: ['medium', 'large'], plate: ['', 'QLM 311'] })).toBe(
      'Größe von mittel auf groß und Kennzeichen von leer auf QLM 311 geändert',
    )
    expect(line('crew member added', { name: 'Edda {1}' })).toBe('Mitarbeiter hinzugefügt: Name Edda {1}')
    expect(line('something newer', {})).toBe('something newer')
  })

  it('keeps what a booking leaves out as it is stored, and says it', () => {
    const correction = {
      steps: [
        {
          name: 'x',
          stage: 'correct' as const,
          needs: 'polish' as const,
          skill: 'polish' as const,
          crew: 1,
          splittable: true,
          sameBay: false,
          byCondition: false,
          minutes: { small: 60, medium: 60, large: 60, xl: 60 },
          waitMin: null,
          waitMax: null,
          productId: null,
        },
      ],
    }
    const panels = [
      { panel: 'Roof' as const, finish: 'matte film' as const, since: null },
      { panel: 'Boot lid' as const, finish: 'respray' as const, since: '2026-04-10' },
    ]
    const over = laidOver(correction, new Map(), {
      finish: 'gloss',
      panels,
      scope: 'whole',
      today: '2026-04-13',
    })
    const kept = over.leftOut.join(', ')
    expect(kept).toBe('Roof (matte film), Boot lid (respray, rests until 2026-05-10)')
    expect(leftOutWords(kept)).toBe('Dach (matte Folie), Heckklappe (neu lackiert, ruht bis 2026-05-10)')
    expect(panelsOver('top', kept)).toEqual(['Bonnet'])
  })

  it('says how much of the car is meant when it is asked', () => {
    expect(scopeWords.front).toBe('Front')
  })

  it('writes decimals with a comma', () => {
    expect(amountWords(1_250, 'ml')).toBe('12,5 ml')
  })
})
