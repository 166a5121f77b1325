import { webcrypto } from 'node:crypto'
import { mkdtempSync, readdirSync, rmSync, statSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { dirname, join } from 'node:path'
import { runInNewContext } from 'node:vm'
import { beforeEach, expect, test } from 'vitest'
import { readProof } from '../../../app/screens/verify/readProof.ts'
import { say } from '../../../main/domain/language/index.ts'
import { readCode } from '../../../main/domain/proof/index.ts'
import { certificateFile, verifyFile } from '../../../main/services/applied/certificate.ts'
import { correctRecord, getApplied, signRecord } from '../../../main/services/applied/record.ts'
import { verifyCertificate } from '../../../main/services/applied/verify.ts'
import { act } from '../../../main/services/desk/desk.ts'
import { speaking } from '../../../main/services/desk/speaking.ts'
import { handOver } from '../../../main/services/job/jobActs.ts'
import { saveReach } from '../../../main/services/reminders/consents.ts'
import { filesBeside } from '../../../main/store/backup/dataFiles.ts'
import { openSigner } from '../../../main/store/signingKey.ts'
import { cureShare, pdfInfo, pdfTags, pdfWords } from '../../documents/poppler.ts'
import { does, job, layeredCar, setWall } from '../cure/coatedCar.ts'
import { signature } from '../intake/intakeDesk.ts'
import { makeDesk, type TestDesk } from '../makeDesk.ts'
import { testShop } from '../testShop.ts'

let desk: TestDesk
let jobId: string
let entryId: string

const entries = async () => (await getApplied(desk, { jobId })).entries
const draftOf = async (lot: string) => {
  const { draft, version } = await getApplied(desk, { jobId })
  return { version, draft: { ...draft, layers: draft.layers.map(layer => ({ ...layer, lot })) } }
}

const signed = async (lot: string) => ({ draft: (await draftOf(lot)).draft, signedBy: 'Jo' })

beforeEach(async () => {
  desk = await makeDesk('2026-04-15T12:00:00Z')
  jobId = await layeredCar(desk, await testShop(desk))
  for (const position of [0, 1, 2, 4]) await does(desk, jobId, position, { reason: 'Lamp beside it' })
  setWall(desk, '16T09:00')
  await handOver(desk, { id: jobId, version: (await job(desk, jobId)).version })
  await signRecord(desk, { jobId, ...(await draftOf('batch 7K-114')), signedBy: 'Jo' })
  entryId = (await entries())[0]!.id
})

const certificate = async () => {
  const { bytes } = await certificateFile(desk, { entryId })
  return { bytes, proof: await readProof(new Blob([bytes])) }
}
const asked = (code: string, statement: string | null = null) => verifyCertificate(desk, { code, statement })
/** The text with one character at `at` changed into another of its kind. */
const changed = (text: string, at: number) => {
  const letter =
    text[at] === 'A' ? 'B' : text[at] === '1' ? '2' : text[at]! >= '0' && text[at]! <= '9' ? '1' : 'A'
  return text.slice(0, at) + letter + text.slice(at + 1)
}

test('The certificate states what was applied, with the year in every date, and nothing of the owner', async () => {
  const { bytes, proof } = await certificate()
  expect(pdfInfo(bytes)).toMatchObject({ Title: 'Certificate of applied coating', Tagged: 'yes' })
  const words = pdfWords(bytes)
  expect(words).not.toMatch(cureShare)
  const [entry] = await entries()
  const { facts } = entry!.content
  for (const part of [
    'Ovrel Two',
    'batch 7K-114',
    'Jo, 16 April 2026, 09:00',
    'Handed over',
    facts.vehicleWords,
  ])
    expect(words).toContain(part)
  for (const { who, lot } of entry!.content.draft.layers) {
    expect(who).not.toBe('')
    expect(proof.statement).toContain(`Laid by: ${who}\n`)
    expect(proof.statement).toContain(`Lot or batch: ${lot}\n`)
  }
  expect(words.match(/Laid 15 April 2026, \d\d:\d\d to 15 April 2026, \d\d:\d\d/g)).toHaveLength(2)
  expect(words).not.toContain(facts.customerName)
  expect(proof.statement).not.toContain(facts.customerName)
  expect(pdfTags(bytes)).toContain('H2 "Is it genuine?"')
  const again = await certificateFile(desk, { entryId })
  expect(Buffer.from(again.bytes).equals(Buffer.from(bytes))).toBe(true)
})

test('The certificate carries the odometer of the intake; a page of before states what it stated', async () => {
  const before = await certificate()
  expect(before.proof.statement).not.toContain('Odometer')
  const page = { ownerName: 'Ines', signature, signedAt: desk.now() }
  const pages = [48_210, 48_310].map((odometer, i) => ({
    ...page,
    number: i + 1,
    content: { draft: { odometer, odometerUnit: 'km' } },
  }))
  await act(desk, tx =>
    tx.intake.create({ data: { jobId, draft: {}, entries: { create: pages } } }).then(() => undefined),
  )
  await correctRecord(desk, { jobId, correctsId: entryId, reason: 'Odometer', ...(await signed('9Z')) })
  const page2 = (await entries()).at(-1)!
  const { bytes } = await certificateFile(desk, { entryId: page2.id })
  expect(pdfWords(bytes)).toContain('Odometer 48310 km')
  expect((await certificate()).proof.statement).toBe(before.proof.statement)
})

test('A certificate as it was made agrees, by its code alone and by its file', async () => {
  const { proof } = await certificate()
  expect(await asked(proof.code!)).toMatchObject({
    yes: true,
    words: 'Yes: the certificate and the record agree.',
  })
  const { yes, sections } = await asked(proof.code!, proof.statement)
  expect(yes).toBe(true)
  expect(sections!.map(({ title }) => title)).toHaveLength(3)
  // Scanned with a line end inside, or typed with blanks.
  expect((await asked(`${proof.code!.slice(0, 60)}\r\n ${proof.code!.slice(60)}`)).yes).toBe(true)
})

test('Any character changed in the code makes it a no or no code at all', async () => {
  const { code } = (await certificate()).proof
  for (let at = 9; at < code!.length; at++) {
    const other = changed(code!, at)
    if (other === code) continue
    const answer = await asked(other).catch((error: { code: string }) => error.code)
    const no = answer === 'code-unread' || (typeof answer === 'object' && !answer.yes)
    // The last character of 64 bytes in base64url carries two bits only: what decodes to the same is the same.
    const same = Buffer.from(readCode(code!).signature, 'base64url').equals(
      Buffer.from(typeof answer === 'string' ? '' : readCode(other).signature, 'base64url'),
    )
    expect(no || same, `character ${at}`).toBe(true)
  }
})

test('A digit changed in what the certificate states makes it a no', async () => {
  const { code, statement } = (await certificate()).proof
  for (const digit of statement!.matchAll(/\d/g)) {
    const answer = await asked(code!, changed(statement!, digit.index))
    expect(answer.words).toBe('No: the certificate says something else than what was signed.')
  }
})

test('A digit changed in the record makes it a no', async () => {
  const { code } = (await certificate()).proof
  const row = await desk.store.read.appliedEntry.findUniqueOrThrow({ where: { id: entryId } })
  const content = JSON.parse(JSON.stringify(row.content).replace('7K-114', '7K-115'))
  await desk.store.transact({ who: 'test', at: desk.now() }, async tx => {
    // The table is guarded; somebody who edits the file by hand takes the guards off first.
    await tx.$executeRawUnsafe('drop trigger if exists "AppliedEntry_noChange"')
    const guards = await tx.$queryRawUnsafe<{ name: string }[]>(
      "select name from sqlite_master where type = 'trigger' and tbl_name = 'AppliedEntry'",
    )
    for (const { name } of guards) await tx.$executeRawUnsafe(`drop trigger "${name}"`)
    await tx.appliedEntry.update({ where: { id: entryId }, data: { content } })
  })
  expect(await asked(code!)).toMatchObject({
    yes: false,
    words: 'No: the record here says something else than what was signed.',
  })
})

test('A signature by another key is a no, whichever key it names', async () => {
  const { code } = (await certificate()).proof
  const folder = mkdtempSync(join(tmpdir(), 'forger-'))
  const forger = openSigner(folder)
  const own = readCode(code!)
  const forged = forger.sign(`Lustrum applied record, form 1\n${own.reference}\n${own.digest}\n`)
  const parts = (signature: string, key: string) =>
    `LUSTRUM1.${own.reference}.${own.digest}.${signature}.${key}`
  expect((await asked(parts(forged, own.key))).words).toContain('the signature is not right')
  expect((await asked(parts(forged, forger.key().id))).words).toContain('not signed with a key of this shop')
  rmSync(folder, { recursive: true })
})

test('A page that was corrected is told as such, and its certificate says so', async () => {
  const { code } = (await certificate()).proof
  const { draft } = await draftOf('batch 7K-115')
  await correctRecord(desk, { jobId, correctsId: entryId, draft, reason: 'Wrong bottle', signedBy: 'Jo' })
  expect(await asked(code!)).toMatchObject({
    yes: false,
    words: expect.stringContaining('a later page corrects it'),
  })
  expect(pdfWords((await certificate()).bytes)).toContain('Page 2 corrects this one')
})

test('The key is one file for this user alone, and a copy of the shop takes it along', async () => {
  await certificate()
  const dataDir = dirname(desk.store.source.file)
  const [name] = readdirSync(join(dataDir, 'keys'))
  expect(statSync(join(dataDir, 'keys', name!)).mode & 0o077).toBe(0)
  expect(filesBeside(dataDir).map(file => file.name)).toContain(`keys/${name}`)
  // The same folder opened again signs with the same key.
  expect(openSigner(dataDir).key()).toEqual(desk.store.signer.key())
})

test('The page checks on its own: yes as it is, no for a changed digit or code, and it knows nothing of the owner', async () => {
  const { bytes } = await verifyFile(desk, { entryId })
  const html = new TextDecoder().decode(bytes)
  const [entry] = await entries()
  expect(html).not.toContain(entry!.content.facts.customerName)
  const script = /<script>([\s\S]*)<\/script>/.exec(html)![1]!
  const { code, statement } = (await certificate()).proof
  const check = (said: string, by: string) => {
    const context = {
      crypto: webcrypto,
      atob,
      btoa,
      TextEncoder,
      document: { getElementById: () => ({}) },
      answer: null,
    }
    runInNewContext(`${script}\nanswer = check(${JSON.stringify(said)}, ${JSON.stringify(by)})`, context)
    return context.answer as unknown as Promise<string>
  }
  expect(await check(statement!, code!)).toBe('Yes: the certificate is as it was signed.')
  for (const digit of statement!.matchAll(/\d/g))
    expect(await check(changed(statement!, digit.index), code!)).toMatch(
      /^No: the certificate says something else/,
    )
  expect(await check(statement!, changed(code!, 20))).toMatch(/^No/)
  expect(await check(statement!, changed(code!, 80))).toMatch(/^No: the signature is not right/)
  expect(await check(statement!, 'nonsense')).toMatch(/^No: this is no code/)
})

test('A record is signed in the language of its owner, and agrees in whatever language it is asked', async () => {
  const { customer } = await job(desk, jobId)
  await saveReach(desk, { customerId: customer.id, language: 'de', zone: null, postal: '', version: 0 })
  const { draft } = await draftOf('batch 7K-114')
  await correctRecord(desk, { jobId, draft, signedBy: 'Jo', correctsId: entryId, reason: 'Charge' })
  const [english, german] = await entries()
  const paper = await certificateFile(desk, { entryId: german!.id })
  expect(pdfWords(paper.bytes)).toContain('Zertifikat über die aufgetragene Beschichtung')
  const { code, statement } = await readProof(new Blob([paper.bytes]))
  // Signed words: another German wording would turn every certificate signed in it into a no.
  for (const line of ['Auto und Nachweis', 'Aushärtung bei Übergabe', 'Fenster der Schicht darunter'])
    expect(statement).toContain(line)
  expect(await asked(code!, statement)).toMatchObject({ yes: true })
  expect(await speaking('de', () => asked(code!, statement))).toMatchObject({ yes: true })
  const before = await readProof(new Blob([(await certificateFile(desk, { entryId: english!.id })).bytes]))
  expect(before.statement).toContain('Car and record')
  const { words } = await asked(before.code!, before.statement)
  const inGerman = await speaking('de', () => asked(before.code!, before.statement))
  expect(inGerman.words).toBe(speaking('de', () => say(words)))
})
