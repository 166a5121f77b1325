import { expect, it } from 'vitest'
import { saidIn, spokenFiles } from './saidWords.ts'

/** A unit of one system, as it stands in a text. */
const unit = /°[CF]|µm|(?<!\p{L})(ml|mL|fl oz|oz|mil|[lg]|kg)(?!\p{L})|micromet|millilit/u

/** The texts that name a unit whatever the shop measures in, each with its reason. */
const fixed: Record<string, string> = {
  'Metric: °C, mL, µm': 'names the choice',
  'US: °F, fl oz, mil': 'names the choice',
  'Say whether the file is in °C or °F.': 'asks which',
  µm: 'names the gauge',
  mil: 'names the gauge',
  '{um} µm': 'said by the shop’s measure',
  '{um} mil': 'said by the shop’s measure',
  '{ageMin} at {referenceC} °C': 'is signed word for word with the certificate, in shops of either measure',
  'Store at temperatures not exceeding … °C/…°F.': 'the regulation’s own words, both units',
  'Do not expose to temperatures exceeding 50 °C/122 °F.': 'the regulation’s own words, both units',
  'Store bulk masses greater than … kg/…lbs at temperatures not exceeding … °C/…°F.':
    'the regulation’s own words, both units',
  '16 fl oz': 'an example of what is printed on a bottle',
  'fl oz': 'what is printed on a bottle',
  '{name} has been counted {unit, select, ml {by volume} g {by weight} other {in pieces}}, so that stays; add another product for the other way.':
    'names the choice, in words',
  'g/ml': 'a density as data sheets give it everywhere, water is 1',
  '{density} g/ml is not a density of a liquid product; take it from the data sheet, water is 1.':
    'a density as data sheets give it everywhere',
  'flammable limit ml||field': 'the history names what is kept, with the unit it is kept in',
  'tare g||field': 'the history names what is kept, with the unit it is kept in',
  'This is no content; write an amount with its unit, such as 500 ml, or leave it empty.':
    'an example of a list',
  '{volumeMl} mL is nothing to mix; give a volume above 0.': 'to who calls it with millilitres',
  millilitres: 'names a column of a list that is taken in',
  'There is no clear coat to spare: every micrometre taken off is colour. Take less than the estimate, and measure after each pass.':
    'no figure',
  'Give the thickness in micrometres.': 'to who calls the api, which takes micrometres; a field speaks first',
  'Give the micrometres, such as 2.5.': 'to who calls the api, which takes micrometres; a field speaks first',
}

it('names no unit in a text but by the shop’s measure: a temperature or a thickness comes with its own', () => {
  const found = spokenFiles()
    .flatMap(path => saidIn(path).said)
    .filter(({ text }) => unit.test(text.replaceAll(/\{\w+\}/g, '')))
    .filter(({ text }) => !fixed[text])
    .map(({ text, path, line }) => `${path}:${line} ${text}`)
  expect(found).toEqual([])
})
