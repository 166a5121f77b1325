import fc from 'fast-check'
import { archiveCustomer, restoreCustomer, saveCustomer } from '../../main/services/records/customers.ts'
import { archiveVehicle, restoreVehicle, saveVehicle } from '../../main/services/records/vehicles.ts'
import { type Act, onRow, type Which, which } from './act.ts'
import { type CarState, type CustomerState, type Model, type Row, stands, unless } from './shopModel.ts'

const customers = {
  list: (model: Model) => model.customers,
  id: (ids: { customers: string[] }) => ids.customers,
}
const cars = { list: (model: Model) => model.cars, id: (ids: { cars: string[] }) => ids.cars }

const standing = (model: Model, of: (car: number) => boolean) =>
  model.jobs.some(job => stands(job, model.nowAt) && of(job.car))

const addCustomer = (name: string): Act => ({
  words: `add customer ${name}`,
  plan: model => unless(model, null, () => model.customers.push({ name, version: 1, archived: false })),
  async really(desk, ids) {
    // The same name twice is asked about; here it is always a second person.
    ids.customers.push((await saveCustomer(desk, { name, accepted: true })).id)
  },
})

const changeCustomer = (row: Which, name: string): Act =>
  onRow<CustomerState>(row, {
    ...customers,
    words: `call them ${name}, customer`,
    plan: (model, customer, { stale }) =>
      unless(model, stale ? 'stale' : null, () => {
        customer.name = name
        customer.version++
      }),
    really: (desk, seen) => saveCustomer(desk, { ...seen, name }),
  })

const archived = (model: Model, row: Row, refusal: string | null, to: boolean) =>
  unless(model, refusal ?? (row.archived === to ? 'stale' : null), () => {
    row.archived = to
    row.version++
  })

const putAwayCustomer = (row: Which): Act =>
  onRow<CustomerState>(row, {
    ...customers,
    words: 'put away customer',
    plan(model, customer, { index, stale }) {
      const booked = standing(model, car => model.cars[car]!.customer === index)
      return archived(model, customer, booked ? 'customer-booked' : stale ? 'stale' : null, true)
    },
    really: archiveCustomer,
  })

const takeBackCustomer = (row: Which): Act =>
  onRow<CustomerState>(row, {
    ...customers,
    words: 'take back customer',
    plan: (model, customer, { stale }) => archived(model, customer, stale ? 'stale' : null, false),
    really: restoreCustomer,
  })

/** No two cars here bear one plate. */
let plates = 0

const addCar = (owner: number): Act => ({
  words: `add a car of customer ${owner}`,
  plan(model, seen) {
    if (seen.customers.length === 0) return null
    const customer = owner % seen.customers.length
    return unless(model, model.customers[customer]!.archived ? 'missing' : null, () =>
      model.cars.push({ customer, version: 1, archived: false }),
    )
  },
  async really(desk, ids, seen) {
    const customerId = ids.customers[owner % seen.customers.length]!
    const plate = `M ${++plates}`
    ids.cars.push((await saveVehicle(desk, { customerId, plate, sizeClass: 'medium', finish: 'gloss' })).id)
  },
})

const putAwayCar = (row: Which): Act =>
  onRow<CarState>(row, {
    ...cars,
    words: 'put away car',
    plan(model, car, { index, stale }) {
      const booked = standing(model, other => other === index)
      return archived(model, car, booked ? 'vehicle-booked' : stale ? 'stale' : null, true)
    },
    really: archiveVehicle,
  })

const takeBackCar = (row: Which): Act =>
  onRow<CarState>(row, {
    ...cars,
    words: 'take back car',
    plan: (model, car, { stale }) => archived(model, car, stale ? 'stale' : null, false),
    really: restoreVehicle,
  })

const name = fc.constantFrom('Ines Vale', 'Toma Birk', 'Rowan Ashdown', 'Hana Okoro')

export const recordActs: fc.Arbitrary<Act>[] = [
  name.map(addCustomer),
  fc.tuple(which, name).map(([row, name]) => changeCustomer(row, name)),
  which.map(putAwayCustomer),
  which.map(takeBackCustomer),
  fc.nat(9).map(addCar),
  which.map(putAwayCar),
  which.map(takeBackCar),
]
