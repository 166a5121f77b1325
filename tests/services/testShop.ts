import { commonPracticeProfile } from '../../main/domain/cure/index.ts'
import type { Capability, ProductKind, Skill, TreatmentStep } from '../../main/domain/shop/index.ts'
import type { Desk } from '../../main/services/desk/desk.ts'
import { saveCustomer } from '../../main/services/records/customers.ts'
import { saveVehicle } from '../../main/services/records/vehicles.ts'
import { saveProduct } from '../../main/services/setUp/products.ts'
import { setUpShop } from '../../main/services/setUp/shopSetUp.ts'
import { saveTreatment } from '../../main/services/setUp/treatments.ts'
import { washStep } from '../domain/shop/washStep.ts'

export interface TestShop {
  bays: Record<string, string>
  crew: Record<string, string>
  treatments: Record<'wash' | 'correction' | 'twoLayers' | 'topped', string>
  vehicles: string[]
}

const step = (name: string, change: Partial<TreatmentStep> & { takes: number }): TreatmentStep => {
  const { takes, ...rest } = change
  return {
    ...washStep,
    name,
    ...rest,
    minutes: { small: takes, medium: takes, large: takes + 30, xl: takes + 60 },
  }
}

/** Fills an empty desk with a shop of four bays and three people, open Monday to Saturday, 08:00 to 18:00. */
export async function testShop(
  desk: Desk,
  zone = 'America/New_York',
  bays: [string, Capability[]][] = [
    ['Bay 1', ['wet']],
    ['Bay 2', ['polish']],
    ['Bay 3', ['polish', 'clean', 'cure']],
    ['Bay 4', ['clean', 'cure']],
  ],
): Promise<TestShop> {
  await setUpShop(desk, {
    name: 'Ashdown Paint Care',
    zone,
    currency: 'USD',
    units: 'us',
    country: 'US',
    weekly: [1, 2, 3, 4, 5, 6].map(weekday => ({ weekday, from: 480, to: 1080 })),
    bays: bays.map(([name, capabilities]) => ({ name, capabilities })),
    crew: [
      { name: 'Mika', skills: ['wash', 'polish'] },
      { name: 'Jo', skills: ['polish', 'coat'] },
      { name: 'Sal', skills: ['coat', 'wash'] },
    ] satisfies { name: string; skills: Skill[] }[],
    starters: false,
  })
  const product = async (name: string, kind: ProductKind, productIds: string[] = []) =>
    (
      await saveProduct(desk, {
        name,
        kind,
        cureProfile: {
          ...commonPracticeProfile(),
          handoverMin: 240,
          handoverAdvisedMin: 720,
          tackFreeMin: 60,
          // As short as the handover's four hours, which then rule alone.
          keepDryMin: 240,
          // Over layers of 90 minutes, and a topper of 45, every panel keeps these with 60 to 240 minutes between
          // the layers, and 240 before the topper.
          recoat: kind === 'coating' ? { minMin: 138, maxMin: 330 } : null,
          topper: kind === 'coating' ? { minMin: 279, advisedMin: 720, maxMin: null, productIds } : null,
          missedRecoat: kind === 'coating' ? 'Abrade lightly and wipe before the next layer.' : '',
        },
      })
    ).id
  const veil = await product('Ovrel Veil', 'topper')
  const two = await product('Ovrel Two', 'coating', [veil])
  const wash = step('Wash', { takes: 60 })
  const polish = step('One-step correction', {
    takes: 240,
    stage: 'correct',
    needs: 'polish',
    skill: 'polish',
    splittable: true,
    byCondition: true,
  })
  const wipe = step('Panel wipe', { takes: 30, stage: 'wipe', needs: 'clean', skill: 'coat', sameBay: false })
  const coat = (name: string) =>
    step(name, { takes: 90, stage: 'coat', needs: 'clean', skill: 'coat', productId: two })
  const topper = step('Topper', {
    takes: 45,
    stage: 'topper',
    needs: 'clean',
    skill: 'coat',
    productId: veil,
  })
  const treatment = async (name: string, medium: number, steps: TreatmentStep[]) =>
    (
      await saveTreatment(desk, {
        name,
        summary: '',
        prices: { small: medium - 10_000, medium, large: medium + 10_000, xl: medium + 20_000 },
        steps,
      })
    ).id
  const treatments = {
    wash: await treatment('Hand wash', 12_000, [wash]),
    correction: await treatment('Single correction', 48_000, [wash, polish]),
    twoLayers: await treatment('Two layers', 129_900, [
      wash,
      wipe,
      { ...coat('First layer'), waitMax: 240 },
      coat('Second layer'),
    ]),
    topped: await treatment('One layer and topper', 99_900, [wash, wipe, coat('Layer'), topper]),
  }
  const vehicles: string[] = []
  for (const [name, plate] of [
    ['Ines Vale', 'KFR 204'],
    ['Toma Birk', 'LOW 771'],
    ['Rowan Ashdown', 'ASH 902'],
    ['Hana Okoro', 'DUN 318'],
  ] as const) {
    const { id: customerId } = await saveCustomer(desk, { name, phone: '(212) 555-0143', note: '' })
    const { id } = await saveVehicle(desk, {
      customerId,
      plate,
      make: 'Marlo',
      model: 'Wendrel',
      colour: 'grey',
      sizeClass: 'medium',
      finish: 'gloss',
      note: '',
    })
    vehicles.push(id)
  }
  const rows = await desk.store.read.bay.findMany()
  const people = await desk.store.read.crewMember.findMany()
  return {
    bays: Object.fromEntries(rows.map(bay => [bay.name, bay.id])),
    crew: Object.fromEntries(people.map(person => [person.name, person.id])),
    treatments,
    vehicles,
  }
}
