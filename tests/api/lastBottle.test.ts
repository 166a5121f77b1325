import { describe, expect, it } from 'vitest'
import { lotRows } from '../../main/store/lotRows.ts'
import { book, shelfShop, stock, workUntil } from '../services/shelf/shelfShop.ts'
import { makeDoor } from './makeDoor.ts'

describe('the last bottle, from two windows at once', () => {
  it('goes to one; the other is told what is left and by whom nothing was drawn twice', async () => {
    const door = await makeDoor('2026-04-15T11:00:00Z')
    const { desk, address, headers } = door
    try {
      const shop = await shelfShop(desk)
      const [lotId] = await stock(desk, shop.coating, shop.sizes.coating, 1)
      const booked = [await book(desk, shop, 0), await book(desk, shop, 1)]
      const first = (await desk.store.read.stepDraw.findMany({ orderBy: { position: 'asc' } }))[0]!.position
      const done = []
      for (const job of booked) done.push(await workUntil(desk, job, first))
      // Each 30 ml of a bottle of 50: only one of them fits.
      const ask = ({ jobId, version }: { jobId: string; version: number }) =>
        fetch(`${address}/trpc/shelf.confirmDraws`, {
          method: 'POST',
          headers: { 'content-type': 'application/json', ...headers },
          body: JSON.stringify({
            jobId,
            version,
            position: first,
            draws: [{ productId: shop.coating, lotId, amount: 30, how: 'proposed' }],
          }),
        })
      const answers = await Promise.all(done.map(ask))
      const bodies = await Promise.all(answers.map(answer => answer.json()))
      expect(answers.map(answer => answer.status).sort()).toEqual([200, 400])
      const refused = bodies.find(body => 'error' in body).error
      expect(refused.data.fault).toEqual({ reason: 'beyond-stock', field: 'draws.0.amount' })
      // The shop measures in US units: 20, 10 and 30 ml at 29.5735 ml a fluid ounce (NIST Handbook 44, appendix C).
      expect(refused.message).toContain(
        'The shelf holds 0.68 fl oz that can be used, 0.34 fl oz short of 1.01 fl oz',
      )
      expect((await lotRows(desk.store.read, [shop.coating])).map(row => row.centi)).toEqual([2000])
      expect(await desk.store.read.stepDraw.count({ where: { NOT: { confirmedAt: null } } })).toBe(1)
      // The same step from two windows at once: drawn once, and the second is told so.
      const left = done[answers.findIndex(answer => answer.status === 400)]!
      await stock(desk, shop.coating, shop.sizes.coating, 2)
      const twice = await Promise.all([ask(left), ask(left)])
      expect(twice.map(answer => answer.status).sort()).toEqual([200, 409])
      expect(await desk.store.read.stockMove.count({ where: { jobId: left.jobId, kind: 'use' } })).toBe(2)
    } finally {
      await door.close()
    }
  })
})
