import { readFileSync } from 'node:fs'
import { beforeEach, expect, it } from 'vitest'
import { letterheadOf } from '../../../main/services/desk/issuer.ts'
import { getPapers, savePapers } from '../../../main/services/setUp/papers.ts'
import { makeDesk, type TestDesk } from '../makeDesk.ts'
import { testShop } from '../testShop.ts'

let desk: TestDesk
const bytes = new Uint8Array(readFileSync('assets/icon.png'))
const logo = { fileName: 'mark.png', bytes }

beforeEach(async () => {
  desk = await makeDesk()
  await testShop(desk)
})

it('Papers are as usual in the shop’s country, in the app’s colour and under its name, until something is saved', async () => {
  expect(await getPapers(desk)).toEqual({ paper: null, colour: '#31456b', version: 0, logoName: null })
  const { paper, issuer } = await letterheadOf(desk.store.read)
  expect([paper, issuer.logo]).toEqual(['LETTER', null])
})

it('What is saved is what every paper is made with; a logo not sent stays, and null takes it off', async () => {
  await savePapers(desk, { version: 0, paper: 'A4', colour: '#225544', logo })
  await savePapers(desk, { version: 1, paper: 'A4', colour: '#552244' })
  expect(await getPapers(desk)).toEqual({ paper: 'A4', colour: '#552244', version: 2, logoName: 'mark.png' })
  const { paper, issuer } = await letterheadOf(desk.store.read)
  expect(paper).toBe('A4')
  expect(issuer.colour).toBe('#552244')
  expect(Buffer.from(issuer.logo!.bytes).equals(Buffer.from(bytes))).toBe(true)
  await savePapers(desk, { version: 2, paper: null, colour: '#552244', logo: null })
  expect((await getPapers(desk)).logoName).toBe(null)
  expect((await letterheadOf(desk.store.read)).issuer.logo).toBe(null)
})

it('A save on an older version, a pale colour and a picture with rows missing are refused and change nothing', async () => {
  await savePapers(desk, { version: 0, paper: 'A4', colour: '#225544' })
  await expect(savePapers(desk, { version: 0, paper: null, colour: '#225544' })).rejects.toMatchObject({
    code: 'stale',
  })
  await expect(savePapers(desk, { version: 1, paper: null, colour: '#eeeeee' })).rejects.toMatchObject({
    code: 'colour-pale',
  })
  const torn = bytes.slice()
  torn.fill(0, 200, 400)
  await expect(
    savePapers(desk, {
      version: 1,
      paper: null,
      colour: '#225544',
      logo: { fileName: 'torn.png', bytes: torn },
    }),
  ).rejects.toMatchObject({ code: 'logo-broken' })
  expect(await getPapers(desk)).toMatchObject({ paper: 'A4', version: 1, logoName: null })
  expect(await desk.store.read.storedFile.count()).toBe(0)
})
