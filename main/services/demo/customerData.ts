import type { Finish, SizeClass } from '../../domain/shop/index.ts'

const names = [
  'Ines Vale',
  'Toma Birk',
  'Rowan Ashdown',
  'Hana Okoro',
  'Petra Lindqvist',
  'Amadou Fenn',
  'Clara Moss',
  'Jonas Wick',
  'Leila Marsh',
  'Oskar Thorne',
  'Mirela Dace',
  'Samir Holt',
  'Greta Pell',
  'Nuno Farrow',
  'Aiko Stead',
  'Bram Colley',
  'Delia Quist',
  'Emre Lund',
  'Faye Orchard',
  'Gil Sorrel',
  'Hester Boon',
  'Ivo Tarrant',
  'Juno Pike',
  'Kofi Larch',
  'Lotte Grange',
  'Mads Ember',
  'Nadia Crewe',
  'Orla Finch',
  'Pavel Heath',
  'Quinn Abbot',
  'Rosa Wynd',
  'Stellan Moor',
  'Tilda Rusk',
  'Umar Vance',
  'Vera Coombe',
  'Wim Alder',
  'Xenia Brook',
  'Yusuf Dale',
  'Zora Penn',
  'Abel Thistle',
]

const cars: { make: string; model: string; sizeClass: SizeClass }[] = [
  { make: 'Marlo', model: 'Wendrel', sizeClass: 'medium' },
  { make: 'Tervane', model: 'Tolvey', sizeClass: 'small' },
  { make: 'Oskett', model: 'Cassowick', sizeClass: 'large' },
  { make: 'Brindle', model: 'Hollick', sizeClass: 'medium' },
  { make: 'Quillan', model: 'Perrowin', sizeClass: 'xl' },
  { make: 'Marlo', model: 'Mirrowen', sizeClass: 'large' },
  { make: 'Tervane', model: 'Stennary', sizeClass: 'medium' },
]

const colours = ['graphite', 'white', 'deep blue', 'black', 'silver', 'red', 'moss green', 'sand']
const letters = 'ABCDEFGHJKLMNPRSTUVWXY'

export interface DemoVehicle {
  id: string
  customerId: string
  plate: string
  make: string
  model: string
  colour: string
  year: number
  sizeClass: SizeClass
  finish: Finish
}

/** Forty invented people. Phone numbers are from the range kept for fiction, mail goes nowhere. */
export const demoCustomers = names.map((name, i) => ({
  id: `demo-customer-${String(i + 1).padStart(2, '0')}`,
  name,
  phone: `+121255501${String(i + 1).padStart(2, '0')}`,
  email: `${name.toLowerCase().replace(' ', '.')}@example.com`,
}))

/** A car each, and a second one for two of them; makes and models are invented. `thisYear` keeps them credible. */
export function demoVehicles(thisYear: number): DemoVehicle[] {
  return Array.from({ length: demoCustomers.length + 2 }, (_, i) => {
    const car = cars[i % cars.length]!
    return {
      ...car,
      id: `demo-vehicle-${String(i + 1).padStart(2, '0')}`,
      customerId: demoCustomers[i % demoCustomers.length]!.id,
      plate: plateOf(i),
      colour: colours[(i * 3) % colours.length]!,
      year: thisYear - ((i * 5) % 9),
      finish: finishOf(i),
    }
  })
}

function plateOf(i: number): string {
  const letter = (step: number, from: number) => letters[(i * step + from) % letters.length]!
  return `${letter(7, 9)}${letter(5, 5)}${letter(13, 15)} ${204 + ((i * 137) % 700)}`
}

function finishOf(i: number): Finish {
  if (i % 13 === 7) return 'matte'
  if (i % 17 === 11) return 'satin'
  return i % 19 === 15 ? 'film' : 'gloss'
}
