import { beforeAll, describe, expect, it } from 'vitest'
import {
  answersAt,
  type ExpiryModel,
  expiryModel,
  linePlan,
  longRunOf,
} from '../../../main/domain/shelf/expiryProgram.ts'
import type { PolicyInput } from '../../../main/domain/shelf/policyInput.ts'
import { trueDemand } from '../../bench/simulation/smallRules.ts'
import { SMALL_SHOPS } from '../../bench/simulation/smallShops.ts'
import { type Highs, loadHighs } from '../schedule/highs.ts'

const cover = Float64Array.of(0, 0, 0.75, 0.25)
const input: PolicyInput = {
  demand: trueDemand(SMALL_SHOPS.expires, 4),
  cover,
  packCenti: 1,
  breaks: [{ fromPacks: 1, packPriceMinor: 1000 }],
  orderCost: { carriageMinor: 600, freeFromMinor: null, lineMinor: 20 },
  joinChance: 0,
  holdRatePerDay: 0.06,
  service: 0.9,
  lifeDays: 3,
}

/** Least cost a day by linear programming: shares of line and order that flow back into themselves (Manne 1960, from memory). */
function byHighs(highs: Highs, { options, uses }: ExpiryModel, missPrice: number): number {
  const flows = options.map(() => [] as string[])
  const costs: string[] = []
  const names: string[] = []
  options.forEach((of, i) => {
    for (const option of of) {
      const name = `x${i}_${option.packs}`
      names.push(name)
      costs.push(`${option.cost + option.carriage + missPrice * option.missed} ${name}`)
      const into = new Map([[i, 1]])
      option.to.forEach((to, u) => {
        into.set(to, (into.get(to) ?? 0) - uses[u]!.chance)
      })
      for (const [line, part] of into)
        if (Math.abs(part) > 1e-12) flows[line]!.push(`${part < 0 ? '-' : '+'} ${Math.abs(part)} ${name}`)
    }
  })
  const rows = flows.map((terms, i) => ` f${i}: ${terms.join(' ')} = 0`)
  const text = `Minimize\n obj: ${costs.join(' + ')}\nSubject To\n${rows.join('\n')}\n all: ${names.join(' + ')} = 1\nEnd\n`
  return highs.solve(text, { output_flag: false }).ObjectiveValue
}

describe('the program over lines of expiring goods', () => {
  let highs: Highs
  beforeAll(async () => {
    highs = await loadHighs()
  })

  it('comes to the least cost a day, as a linear program over the same lines does', () => {
    const model = expiryModel(input, 4)!
    expect(model.lines.length).toBeGreaterThan(30)
    for (const missPrice of [300, 1000, 4000]) {
      const { costPerDay } = answersAt(model, 0, missPrice)
      expect(costPerDay / byHighs(highs, model, missPrice)).toBeCloseTo(1, 2)
    }
  })

  it('is beaten by no order point and size, measured over the same lines', () => {
    const model = expiryModel(input, 4)!
    const missPrice = 1500
    const costOf = (own: Int32Array) => {
      const { share } = longRunOf(model, { own, joined: own }, 0)
      let cost = 0
      own.forEach((n, i) => {
        const option = model.options[i]![n]!
        cost += share[i]! * (option.cost + option.carriage + missPrice * option.missed)
      })
      return cost
    }
    const best = answersAt(model, 0, missPrice)
    expect(costOf(best.own)).toBeCloseTo(best.costPerDay, 0)
    for (const point of [0, 1, 2, 3])
      for (const size of [1, 2, 3, 4]) {
        const rule = model.lines.map((line, i) => {
          const there = line.slice(0, -1).reduce((sum, cells) => sum + cells, 0) - line.at(-1)!
          return there >= point ? 0 : Math.min(size, model.options[i]!.length - 1)
        })
        expect(costOf(Int32Array.from(rule))).toBeGreaterThan(best.costPerDay - 0.5)
      }
  })

  it('serves as asked and no dearer than it must: the more is asked, the more it costs', () => {
    const services = [0.8, 0.9, 0.95].map(service => linePlan({ ...input, service }, 5)!.service)
    services.forEach((service, i) => {
      expect(service).toBeGreaterThanOrEqual([0.8, 0.9, 0.95][i]!)
      expect(service).toBeGreaterThanOrEqual(services[i - 1] ?? 0)
    })
  })

  it('orders more where an order goes out anyway', () => {
    const { packs, joinPacks } = linePlan({ ...input, joinChance: 0.3 }, 5)!
    const keys = Object.keys(packs)
    expect(keys.some(key => packs[key] === 0 && joinPacks[key]! > 0)).toBe(true)
    expect(linePlan(input, 5)!.joinPacks).toEqual({})
  })

  it('is not made where goods keep, last long, or are too many to look at', () => {
    expect(linePlan({ ...input, lifeDays: null }, 5)).toBeNull()
    expect(linePlan({ ...input, lifeDays: 14 }, 5)).toBeNull()
    expect(linePlan(input, 13)).toBeNull()
    // No order could be made.
    expect(linePlan({ ...input, packCenti: 6 }, 5)).toBeNull()
  })
})
