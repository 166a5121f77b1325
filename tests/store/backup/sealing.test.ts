import fc from 'fast-check'
import { expect, it } from 'vitest'
import { makeLock, openLock, seal, unseal } from '../../../main/store/backup/sealing.ts'

const bound = Buffer.from('LUSTRUM-COPY 1\n{}\n')
// Low enough for a test; what a copy is made with is the format's own.
const { lock, key } = await makeLock('four words of no meaning', 16)

async function* inPieces(bytes: Buffer, size: number) {
  for (let from = 0; from < bytes.length; from += size) yield bytes.subarray(from, from + size)
}
const all = async (chunks: AsyncIterable<Buffer>) => Buffer.concat(await Array.fromAsync(chunks))
const sealed = (bytes: Buffer, size = 1000) => all(seal(inPieces(bytes, size), key, bound))
const opened = (bytes: Buffer, size = 999) => all(unseal(inPieces(bytes, size), key, bound))

const frame = 64 * 1024
const text = (length: number) => Buffer.from(Array.from({ length }, (_, i) => (i * 7919) % 251))

it.each([0, 1, frame - 1, frame, frame + 1, 2 * frame, 3 * frame + 17])(
  'gives %i bytes back as they were',
  async length => {
    const bytes = text(length)
    const locked = await sealed(bytes)
    expect(locked.length).toBe(length + 16 * Math.max(1, Math.ceil(length / frame)))
    expect((await opened(locked)).equals(bytes)).toBe(true)
  },
)

it('does not care how the bytes come', async () => {
  const bytes = text(2 * frame + 5)
  await fc.assert(
    fc.asyncProperty(
      fc.integer({ min: 500, max: 3 * frame }),
      fc.integer({ min: 500, max: 3 * frame }),
      async (a, b) => {
        expect((await opened(await sealed(bytes, a), b)).equals(bytes)).toBe(true)
      },
    ),
    { numRuns: 20 },
  )
})

it('notices any byte that is another', async () => {
  const locked = await sealed(text(2 * frame))
  await fc.assert(
    fc.asyncProperty(
      fc.nat({ max: locked.length - 1 }),
      fc.integer({ min: 1, max: 255 }),
      async (at, flip) => {
        const bad = Buffer.from(locked)
        bad[at] = (bad[at] ?? 0) ^ flip
        await expect(opened(bad)).rejects.toThrow()
      },
    ),
    { numRuns: 50 },
  )
})

it('notices a frame that is missing, doubled or in another place, and another beginning', async () => {
  const locked = await sealed(text(3 * frame))
  const at = frame + 16
  const [first, second, third] = [0, 1, 2].map(i => locked.subarray(i * at, (i + 1) * at)) as [
    Buffer,
    Buffer,
    Buffer,
  ]
  for (const bad of [
    [first, second],
    [first, third],
    [second, first, third],
    [first, first, second, third],
    [first, second, third, third],
    [first, second, third.subarray(0, -1)],
    [],
  ])
    await expect(opened(Buffer.concat(bad))).rejects.toThrow()
  await expect(all(unseal(inPieces(locked, 1000), key, Buffer.from('another')))).rejects.toThrow()
})

it('opens with its passphrase alone, however its letters are typed', async () => {
  expect(await openLock(lock, 'four words of no meaning')).toEqual(key)
  expect(await openLock(lock, 'four words of no meanings')).toBeNull()
  const typed = await makeLock('Gl\u00e4nzend', 16)
  expect(await openLock(typed.lock, 'Gla\u0308nzend')).toEqual(typed.key)
  // What a file from elsewhere may ask of this machine has a limit.
  expect(await openLock({ ...lock, cost: 2 ** 24 }, 'four words of no meaning')).toBeNull()
  expect(await openLock({ ...lock, cost: 1000 }, 'four words of no meaning')).toBeNull()
})
