import { readFileSync } from 'node:fs'
import { beforeEach, describe, expect, it } from 'vitest'
import { beginTake, importStands, lastOutcome } from '../../../main/services/imports/importing.ts'
import { importReportFile } from '../../../main/services/imports/reportFile.ts'
import { getCustomer, saveCustomer } from '../../../main/services/records/customers.ts'
import { findCustomers } from '../../../main/services/records/customersFind.ts'
import { dueVisits } from '../../../main/services/upkeep/dueVisits.ts'
import { makeDesk, type TestDesk } from '../makeDesk.ts'
import { everyRow } from '../records/everyRow.ts'
import { type TestShop, testShop } from '../testShop.ts'
import { importingEnds } from './ends.ts'
import { checkList, openList, takeList } from './lists.ts'

let desk: TestDesk
let shop: TestShop
beforeEach(async () => {
  desk = await makeDesk('2026-04-15T14:00:00Z')
  shop = await testShop(desk)
})

const people = `First name,Last name,Mobile phone,E-mail address,Type,Notes
Oda,Brandt,(212) 555-0131,oda@example.com,company,"says ""hi"", then
goes 👋"
דנה,לוי,+44 20 7946 0123,,,‏מרחבא
Wim,,12,nobody,whatever,
,,,,,
'=Ann,Lee,,,,
Brandt,Oda,212-555-0131,,,
`

describe('a list of customers', () => {
  it('is looked through row by row, and nothing is written before it is accepted', async () => {
    const before = everyRow(desk)
    const { report } = await checkList(desk, 'customers', people)
    expect(report).toMatchObject({ rows: 6, added: 3, bad: 1, known: 1, importId: null })
    expect(report.badRows.map(({ row, column, value }) => [row, column, value])).toEqual([
      [4, 'Phone', '12'],
      [4, 'E-mail', 'nobody'],
      [4, 'Person, firm or fleet', 'whatever'],
    ])
    for (const { fix } of report.badRows) expect(fix).toMatch(/\.$/)
    // A person twice in the file, the name in another order.
    expect(report.knownRows).toEqual([{ row: 7, why: 'Oda Brandt is on file already.' }])
    expect(everyRow(desk)).toEqual(before)
  })

  it('is taken in with every sign of every field, and its people are found at once', async () => {
    expect((await findCustomers(desk, { text: 'brandt' })).total).toBe(0)
    await takeList(desk, 'customers', people)
    const { customers } = await findCustomers(desk, { text: 'brandt' })
    expect(await getCustomer(desk, { id: customers[0]!.id })).toMatchObject({
      name: 'Oda Brandt',
      phone: '+12125550131',
      email: 'oda@example.com',
      kind: 'firm',
      note: 'says "hi", then\ngoes 👋',
      version: 1,
    })
    expect((await findCustomers(desk, { text: 'לוי' })).customers).toMatchObject([
      { name: 'דנה לוי', phone: '+442079460123' },
    ])
    // An apostrophe that kept a spreadsheet from running it is taken off.
    expect((await findCustomers(desk, { text: 'ann lee' })).customers).toMatchObject([{ name: '=Ann Lee' }])
  })

  it('is read the next time as it was the last, and adds nobody twice', async () => {
    const text = 'A,B\nOda Brandt,212 555 0131\n'
    const guessed = await openList(desk, 'customers', text)
    expect(guessed).toMatchObject({ remembered: false, reading: { columns: { name: null } } })
    const columns = { ...guessed.reading.columns, name: 0, phone: 1 }
    await takeList(desk, 'customers', text, { columns })
    const again = await openList(desk, 'customers', text)
    expect(again).toMatchObject({ remembered: true, reading: { columns } })
    expect((await checkList(desk, 'customers', text)).report).toMatchObject({ added: 0, known: 1 })
  })

  it('is taken in as somebody else saves, whom it does not add a second time', async () => {
    const { input } = await checkList(desk, 'customers', 'Name,Phone\nOda Brandt,212 555 0131\nWim Alder,\n')
    beginTake(desk, input)
    await saveCustomer(desk, { name: 'Brandt, Oda', phone: '212 555 0131' })
    await importingEnds(desk)
    expect(importStands(desk).report).toMatchObject({ added: 1, known: 1 })
  })

  it('is written as it was seen where others save whom it does not ask about', async () => {
    const { input } = await checkList(desk, 'customers', 'Name,Phone\nOda Brandt,212 555 0131\n')
    const seen = lastOutcome(desk.store)!.planned
    await saveCustomer(desk, { name: 'Wim Alder' })
    beginTake(desk, input)
    await importingEnds(desk)
    expect(importStands(desk).report).toMatchObject({ added: 1, known: 0 })
    expect(lastOutcome(desk.store)!.planned).toBe(seen)
  })

  it('is refused without a name column, changed since it was looked through, or not open', async () => {
    const { fileId, reading } = await openList(desk, 'customers', 'X,Y\n1,2\n')
    expect(() => beginTake(desk, { fileId, reading })).toThrow(/Name/)
    const { input } = await checkList(desk, 'customers', 'Name,Phone\nOda Brandt,\n')
    const columns = { ...input.reading.columns, phone: null }
    expect(() => beginTake(desk, { ...input, reading: { ...input.reading, columns } })).toThrow(
      /Look the rows/,
    )
    expect(() => beginTake(desk, { ...input, fileId: 'gone' })).toThrow(/choose it again/)
    for (const text of ['', 'Name\n', '\u0000\u0001\u0000', 'PK\u0003\u0004no zip'])
      await expect(openList(desk, 'customers', text)).rejects.toMatchObject({ field: 'base64' })
  })

  it('says what to mend in a list of its own, whose cells no spreadsheet runs', async () => {
    await checkList(desk, 'customers', 'Name,Phone\nOda Brandt,=1+1\n')
    const text = new TextDecoder().decode((await importReportFile(desk)).bytes)
    expect(text).toContain(`2,Phone,'=1+1,`)
  })
})

describe('a list of vehicles', () => {
  it('finds its owners or writes them down, and tells whose plate it would take', async () => {
    const report = await takeList(
      desk,
      'vehicles',
      `Plate,VIN,Make,Model,Color,Year,Size,Paint,Owner,Owner phone
QLM 301,1M8GDM9AXKP042788,Corvane,Cassowick,dark grey,1989,L,single stage,Oda Brandt,(212) 555-0131
QLM 302,,Corvane,Ibis,,2019,,,oda brandt,
QLM 303,1M8GDM9A1KP042788,,,,3000,,,Oda Brandt,
KFR 204,,,,,,,,Oda Brandt,
QLM 301,,,,,,,,Brandt Oda,
,,,,,,,,Oda Brandt,
QLM 304,,,,,,,,,
`,
    )
    expect(report).toMatchObject({ added: 2, owners: 1, known: 1, bad: 4 })
    expect(report.badRows.map(({ row, column }) => [row, column])).toEqual([
      [4, 'Model year'],
      [5, 'Plate'],
      [7, 'Plate'],
      [8, 'Owner'],
    ])
    const [oda] = (await findCustomers(desk, { text: 'qlm301' })).customers
    expect(oda?.vehicles).toHaveLength(2)
    expect((await getCustomer(desk, { id: oda!.id })).vehicles).toContainEqual(
      expect.objectContaining({ plate: 'QLM 301', sizeClass: 'large', paint: 'single-stage', year: 1989 }),
    )
  })
})

describe('a list of past coatings', () => {
  const list = `Plate,Coating,Date,Renewed on
KFR 204,Ovrel Two,14/05/2024,13/11/2025
kfr204,ovrel two,14/05/2024,
NOT 1,Ovrel Two,14/05/2024,
KFR 204,Nothing,32/05/2024,
KFR 204,Ovrel Two,14/05/2031,
`
  it('makes reminders work from the first day, and settles the order of days by itself', async () => {
    const opened = await openList(desk, 'coatings', list)
    expect(opened).toMatchObject({ ask: [], reading: { dayOrder: 'dmy' } })
    const report = await takeList(desk, 'coatings', list)
    expect(report).toMatchObject({ added: 1, known: 1, bad: 3 })
    expect(report.badRows.map(({ row, column }) => [row, column])).toEqual([
      [4, 'Plate'],
      [5, 'Product'],
      [5, 'Laid on'],
      [6, 'Laid on'],
    ])
    const { visits } = await dueVisits(desk, { fromDate: '2025-01-01', toDate: '2027-12-31' })
    const open = visits.filter(visit => !visit.projected && visit.vehicleId === shop.vehicles[0])
    // A coating is renewed yearly where nothing else is known; the inspection counts from the coating.
    expect(open.map(({ kind, ruleOn }) => [kind, ruleOn])).toEqual([
      ['inspection', '2025-05-14'],
      ['topper', '2026-11-13'],
    ])
  })

  it('asks how days are written where the file does not say', async () => {
    const opened = await openList(desk, 'coatings', 'Plate,Coating,Date\nKFR 204,Ovrel Two,04/05/2024\n')
    expect(opened.ask).toEqual(['dayOrder'])
    const { report } = await checkList(
      desk,
      'coatings',
      'Plate,Coating,Date\nKFR 204,Ovrel Two,04/05/2024\n',
      {
        dayOrder: 'mdy',
      },
    )
    expect(report.added).toBe(1)
    await expect(
      checkList(desk, 'coatings', 'Plate,Coating,Date\nKFR 204,Ovrel Two,04/05/2024\n'),
    ).rejects.toMatchObject({ code: 'ask', field: 'dayOrder' })
  })
})

describe('a list of products', () => {
  it('asks for a unit only where neither heading nor cell names one, and counts what has a content', async () => {
    expect((await openList(desk, 'products', 'Name,Kind,Size\nSlick,wash,500\n')).ask).toEqual(['volume'])
    expect((await openList(desk, 'products', 'Name,Kind,Size (ml)\nSlick,wash,500\n')).ask).toEqual([])
    expect((await openList(desk, 'products', 'Name,Kind,Size\nSlick,wash,"1,250 ml"\n')).ask).toEqual([
      'mark',
    ])
    const report = await takeList(
      desk,
      'products',
      'Name,Kind,Content\nSlick Foam,wash,16 fl oz\nGlassen,Ceramic coating,50 ml\nOvrel Two,coating,\nX,tea,\n',
    )
    expect(report).toMatchObject({ added: 2, known: 1, bad: 1 })
    const rows = await desk.store.read.product.findMany({
      where: { name: { in: ['Slick Foam', 'Glassen'] } },
      orderBy: { name: 'asc' },
      include: { sizes: true, shelf: true },
    })
    expect(rows).toMatchObject([
      {
        cureProfile: { handoverMin: 720 },
        sizes: [{ label: '50 ml', labelCenti: 5_000 }],
        shelf: { unit: 'ml' },
      },
      // 16 US fluid ounces are 473.176 ml (NIST Special Publication 811, appendix B.8).
      { cureProfile: null, sizes: [{ label: '16 fl oz', labelCenti: 47_318 }] },
    ])
  })
})

it('a spreadsheet is read as a list is, with its days as days', async () => {
  const bytes = readFileSync(new URL('coatings.xlsx', import.meta.url))
  const opened = await openList(desk, 'coatings', bytes, 'coatings.xlsx')
  expect(opened).toMatchObject({
    columns: ['Plate', 'Coating', 'Date'],
    sample: [['KFR 204', 'Ovrel Two', '2024-05-04']],
    ask: [],
  })
})
