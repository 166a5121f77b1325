import { languageNow, say } from '../../domain/language/index.ts'
import { Refusal } from '../../domain/refusal.ts'
import {
  checkBay,
  checkCrewMember,
  checkShop,
  checkText,
  checkUnique,
  starterProducts,
  starterTreatments,
  usualConditionFactors,
} from '../../domain/shop/index.ts'
import { noJson, toJson, withHelp } from '../../store/json.ts'
import type { Tx } from '../../store/store.ts'
import { type Desk, stampOf } from '../desk/desk.ts'
import { findShop, type ShopView, shopOf } from '../desk/shopView.ts'
import { speaking } from '../desk/speaking.ts'
import type { ShopSetUp } from './inputs.ts'

/** The first run: the shop, its bays and its crew, all at once or not at all. Refused where there is a shop already. */
export async function setUpShop(desk: Desk, input: ShopSetUp): Promise<ShopView> {
  const { bays, crew, starters, ...shop } = input
  const { country, units } = shop
  // Refused as the shop will write its times, since its form shows them so.
  speaking(languageNow(), () => checkShop(shop), { country, units })
  const data = {
    ...shop,
    name: checkText(shop.name, 'name', say("The shop's name")),
    weekly: shop.weekly as object[],
  }
  const bayRows = checkRows(
    bays,
    'bays',
    { none: say('There is no bay yet; add at least one.'), one: say('a bay') },
    checkBay,
  )
  const crewRows = checkRows(
    crew.map(member => ({ ...member, weekly: null })),
    'crew',
    { none: say('There is no crew member yet; add at least one.'), one: say('a crew member') },
    checkCrewMember,
  )
  return desk.store.transact({ ...stampOf(desk), followed: false }, async (tx, audit) => {
    await assertNoShop(tx)
    await tx.shop.create({ data: { ...data, conditionFactors: { ...usualConditionFactors } } })
    await tx.bay.createMany({ data: bayRows })
    await tx.crewMember.createMany({ data: crewRows.map(row => ({ ...row, weekly: noJson })) })
    if (starters) await addStarters(tx)
    audit({ act: 'set up', entity: 'shop', entityId: '1', detail: { ...data, bays, crew, starters } })
    return shopOf(tx)
  })
}

/** Refuses where the database already belongs to a shop. */
export async function assertNoShop(tx: Tx): Promise<void> {
  const shop = await findShop(tx)
  if (shop)
    throw new Refusal(
      'shop-there',
      'shop',
      shop.name,
      say('This data folder already belongs to {name}; open another folder for a second shop.', {
        name: shop.name,
      }),
    )
}

function checkRows<Row extends { name: string }>(
  rows: Row[],
  field: string,
  said: { none: string; one: string },
  check: (row: Row, field: string) => string,
): (Row & { position: number })[] {
  if (rows.length === 0) throw new Refusal('list-empty', field, rows, said.none)
  const kept = rows.map((row, position) => ({ ...row, name: check(row, `${field}.${position}.`), position }))
  checkUnique(
    kept.map(row => row.name),
    i => `${field}.${i}.name`,
    said.one,
  )
  return kept
}

async function addStarters(tx: Tx): Promise<void> {
  const ids = new Map<string | null, string>()
  for (const { id, cureProfile, ...product } of starterProducts()) {
    const row = await tx.product.create({
      data: { ...product, cureProfile: cureProfile ? toJson(cureProfile) : noJson },
    })
    ids.set(id, row.id)
  }
  for (const [position, { steps, ...treatment }] of starterTreatments().entries())
    await tx.treatment.create({
      data: {
        ...treatment,
        checks: (treatment.checks ?? []).map(toJson),
        position,
        steps: {
          createMany: {
            data: steps.map((step, i) => ({
              ...withHelp(step),
              position: i,
              productId: ids.get(step.productId) ?? null,
            })),
          },
        },
      },
    })
}
