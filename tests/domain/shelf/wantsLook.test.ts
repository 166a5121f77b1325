import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { type Holding, takeFirstExpired, wantsLook } from '../../../main/domain/shelf/index.ts'

const day = 20_000

const bottle = (
  lotId: string,
  centi: number,
  batch: string | null = null,
  opened = false,
): Holding & { batch: string | null } => ({
  lotId,
  centi,
  opened,
  lastDay: null,
  batch,
})

const coat = (jobId: string, needCenti: number, productId = 'coating') => ({
  jobId,
  draws: [{ productId, needCenti, laid: [] }],
})

const looksOf = (...given: Parameters<typeof wantsLook>) =>
  wantsLook(...given).map(looks => Object.fromEntries(looks))

describe('Which steps may be confirmed unseen', () => {
  test('A step of which the bottle next in line gives all may; the next car, whose coat it would share with another batch, not', () => {
    const shelf = new Map([['coating', [bottle('a', 5_000, 'K7', true), bottle('b', 5_000, 'L2')]]])
    expect(looksOf([coat('1', 3_000), coat('2', 3_000)], shelf, day)).toEqual([{}, { coating: 'mixes' }])
  })

  test('What wants a look draws nothing: a small step after it still has the open bottle', () => {
    const shelf = new Map([['coating', [bottle('a', 5_000, 'K7', true), bottle('b', 5_000, 'L2')]]])
    expect(looksOf([coat('1', 3_000), coat('2', 3_000), coat('3', 2_000)], shelf, day)).toEqual([
      {},
      { coating: 'mixes' },
      {},
    ])
  })

  test('Bottles of one printed batch are no mix; those of which nobody wrote it down are', () => {
    const of = (batch: string | null) =>
      looksOf(
        [coat('1', 6_000)],
        new Map([['coating', [bottle('a', 5_000, batch), bottle('b', 5_000, batch)]]]),
        day,
      )
    expect(of('K7')).toEqual([{}])
    expect(of(null)).toEqual([{ coating: 'mixes' }])
  })

  test('What is on the car counts: from the record, and from a step of this list that was plain', () => {
    const shelf = () => new Map([['coating', [bottle('a', 3_000, 'K7'), bottle('b', 5_000, 'L2')]]])
    const second = {
      jobId: '2',
      draws: [{ ...coat('2', 1_000).draws[0]!, laid: [{ id: 'z', batch: 'L2' }] }],
    }
    expect(looksOf([second], shelf(), day)).toEqual([{ coating: 'mixes' }])
    expect(looksOf([coat('1', 3_000), coat('1', 1_000)], shelf(), day)).toEqual([{}, { coating: 'mixes' }])
    expect(looksOf([coat('1', 3_000), coat('2', 1_000)], shelf(), day)).toEqual([{}, {}])
  })

  test('Where lots do no harm nothing is mixed; where the bottles hold less it is short, and so is an empty shelf', () => {
    const wash = (needCenti: number) => ({
      jobId: '1',
      draws: [{ productId: 'soap', needCenti, laid: null }],
    })
    const shelf = new Map([['soap', [bottle('a', 1_000), bottle('b', 1_000)]]])
    expect(looksOf([wash(1_500), wash(600), wash(500)], shelf, day)).toEqual([{}, { soap: 'short' }, {}])
    expect(looksOf([wash(1)], new Map(), day)).toEqual([{ soap: 'short' }])
  })

  test('A step with one draw that wants a look draws none of its others', () => {
    const shelf = new Map([
      ['coating', [bottle('a', 100)]],
      ['soap', [bottle('s', 1_000)]],
    ])
    const both = {
      jobId: '1',
      draws: [
        { productId: 'soap', needCenti: 1_000, laid: null },
        { productId: 'coating', needCenti: 200, laid: [] },
      ],
    }
    const after = { jobId: '2', draws: [{ productId: 'soap', needCenti: 1_000, laid: null }] }
    expect(looksOf([both, after], shelf, day)).toEqual([{ coating: 'short' }, {}])
  })

  test('The plain ones, drawn one after another, never run out and never mix', () => {
    const batches = fc.constantFrom('K7', 'L2', null)
    const shelf = fc.array(fc.tuple(fc.integer({ min: 1, max: 500 }), batches, fc.boolean()), {
      maxLength: 6,
    })
    const steps = fc.array(fc.tuple(fc.integer({ min: 0, max: 3 }), fc.integer({ min: 1, max: 400 })), {
      maxLength: 8,
    })
    fc.assert(
      fc.property(shelf, steps, (bottles, wanted) => {
        const start = bottles.map(([centi, batch, opened], i) => bottle(`lot ${i}`, centi, batch, opened))
        const list = wanted.map(([car, needCenti]) => coat(`car ${car}`, needCenti))
        const looks = wantsLook(list, new Map([['coating', start]]), day)
        let left = start
        const onCar = new Map<string, Set<string>>()
        for (const [i, { jobId, draws }] of list.entries()) {
          if (looks[i]!.size > 0) continue
          const { use, shortCenti } = takeFirstExpired(left, draws[0]!.needCenti, day)
          expect(shortCenti).toBe(0)
          const taken = new Map(use.map(({ lotId, centi }) => [lotId, centi]))
          const own = onCar.get(jobId) ?? new Set()
          for (const { lotId, batch } of left) if (taken.has(lotId)) own.add(batch ?? lotId)
          onCar.set(jobId, own)
          left = left.map(each => {
            const centi = taken.get(each.lotId)
            return centi ? { ...each, centi: each.centi - centi, opened: true } : each
          })
        }
        for (const own of onCar.values()) expect(own.size).toBeLessThanOrEqual(1)
      }),
    )
  })
})
