/** Documents as files: behind the same door as everything else, made anew for each request. */

import { type Context, Hono } from 'hono'
import { say } from '../domain/language/index.ts'
import { Refusal, refuse } from '../domain/refusal.ts'
import { certificateFile, verifyFile } from '../services/applied/certificate.ts'
import type { Desk } from '../services/desk/desk.ts'
import { diagnosticsFile } from '../services/diagnostics/diagnostics.ts'
import { historyFilter } from '../services/history/inputs.ts'
import { importReportFile } from '../services/imports/reportFile.ts'
import { photoFile } from '../services/intake/photos.ts'
import { intakeReport } from '../services/intake/report.ts'
import { careSheet } from '../services/job/ownerWords.ts'
import { workOrder } from '../services/job/workOrder.ts'
import { everythingFile } from '../services/leaving/everything.ts'
import { historyFile } from '../services/leaving/historyFile.ts'
import { personFile } from '../services/leaving/person.ts'
import { electronicFile } from '../services/money/electronic.ts'
import { journalInput } from '../services/money/inputs.ts'
import { invoiceFile, quoteFile, statementFile } from '../services/money/paperFiles.ts'
import { journalFile } from '../services/money/takings.ts'
import { daySheet } from '../services/morning/daySheet.ts'
import { shopCalendar } from '../services/reminders/feeds.ts'
import { ownerLetter } from '../services/reminders/ownerLetter.ts'
import { bottleLabel } from '../services/shelf/bottleLabel.ts'
import { orderDocument } from '../services/shelf/orders/orderDocument.ts'
import { sheetFile } from '../services/shelf/safety.ts'

interface File {
  name: string
  type: string
  bytes: Uint8Array<ArrayBuffer> | ReadableStream<Uint8Array>
  /** To be kept, not read in the window. */
  keep?: boolean
}

/** Answers with a file, or says in words why there is none. */
async function answer(context: Context, make: () => Promise<File>): Promise<Response> {
  try {
    const { name, type, bytes, keep } = await make()
    return context.body(bytes as Uint8Array<ArrayBuffer> | ReadableStream, 200, {
      'content-type': type,
      // RFC 6266: a plain name for every reader, and the whole one for those that know how.
      'content-disposition': `${keep ? 'attachment' : 'inline'}; filename="${plain(name)}"; filename*=UTF-8''${encodeURIComponent(name)}`,
      'cache-control': 'no-store',
    })
  } catch (error) {
    if (!(error instanceof Refusal)) throw error
    return context.text(error.message, error.code === 'missing' ? 404 : 400)
  }
}

function plain(name: string): string {
  return name.replaceAll(/[^\w.\- ]/g, '_')
}

/** The addresses of all documents. */
export function documentDoor(desk: Desk): Hono {
  const app = new Hono()
  app.get('/documents/order/:file{[\\w-]+\\.pdf}', context =>
    answer(context, () => orderDocument(desk, { id: idOf(context.req.param('file')) })),
  )
  app.get('/documents/label/:file{[\\w-]+\\.pdf}', context =>
    answer(context, () =>
      bottleLabel(desk, {
        lotId: idOf(context.req.param('file')),
        origin: new URL(context.req.url).origin,
      }),
    ),
  )
  app.get('/documents/care/:file{[\\w-]+\\.pdf}', context =>
    answer(context, () => careSheet(desk, { id: idOf(context.req.param('file')) })),
  )
  app.get('/documents/intake/:file{[\\w-]+\\.pdf}', context =>
    answer(context, () => intakeReport(desk, { entryId: idOf(context.req.param('file')) })),
  )
  app.get('/documents/work-order/:file{[\\w-]+\\.pdf}', context =>
    answer(context, () => workOrder(desk, { id: idOf(context.req.param('file')) })),
  )
  app.get('/documents/day/:file{\\d{4}-\\d\\d-\\d\\d\\.pdf}', context =>
    answer(context, () => daySheet(desk, { date: idOf(context.req.param('file')) })),
  )
  app.get('/documents/certificate/:file{[\\w-]+\\.pdf}', context =>
    answer(context, () => certificateFile(desk, { entryId: idOf(context.req.param('file')) })),
  )
  app.get('/documents/verify/:file{[\\w-]+\\.html}', context =>
    answer(context, () => verifyFile(desk, { entryId: idOf(context.req.param('file')) })),
  )
  app.get('/documents/letter/:file{[\\w-]+\\.pdf}', context =>
    answer(context, () => ownerLetter(desk, { messageId: idOf(context.req.param('file')) })),
  )
  app.get('/documents/calendar.ics', context =>
    answer(context, async () => ({
      name: 'lustrum.ics',
      type: 'text/calendar; charset=utf-8',
      bytes: new TextEncoder().encode(
        await shopCalendar(desk, { details: context.req.query('details') === 'yes' }),
      ),
    })),
  )
  app.get('/documents/diagnostics.txt', context =>
    answer(context, async () => ({
      name: 'lustrum-diagnostics.txt',
      type: 'text/plain; charset=utf-8',
      bytes: new TextEncoder().encode(await diagnosticsFile(desk)),
      keep: true,
    })),
  )
  app.get('/documents/history.csv', context =>
    answer(context, () => {
      const { entities, ...rest } = context.req.query()
      const given = historyFilter.safeParse({ ...rest, ...(entities && { entities: entities.split(',') }) })
      if (!given.success)
        refuse('invalid', { filter: null }, say('This history cannot be asked for; choose again.'))
      return historyFile(desk, given.data)
    }),
  )
  app.get('/documents/invoice/:file{[\\w-]+\\.pdf}', context =>
    answer(context, () => invoiceFile(desk, { id: idOf(context.req.param('file')) })),
  )
  app.get('/documents/electronic/:file{[\\w-]+\\.xml}', context =>
    answer(context, () => electronicFile(desk, { id: idOf(context.req.param('file')) })),
  )
  app.get('/documents/quote/:file{[\\w-]+\\.pdf}', context =>
    answer(context, () => quoteFile(desk, { id: idOf(context.req.param('file')) })),
  )
  app.get('/documents/statement/:file{[\\w-]+\\.pdf}', context =>
    answer(context, () => statementFile(desk, { id: idOf(context.req.param('file')) })),
  )
  app.get('/documents/journal.csv', context =>
    answer(context, () => {
      const given = journalInput.safeParse(context.req.query())
      if (!given.success)
        refuse('invalid', { fromDate: null }, say('Give the first and the last day of the journal.'))
      return journalFile(desk, given.data)
    }),
  )
  app.get('/documents/rows-to-look-at.csv', context => answer(context, () => importReportFile(desk)))
  app.get('/documents/everything.zip', context => answer(context, () => everythingFile(desk)))
  app.get('/documents/person/:file{[\\w-]+\\.zip}', context =>
    answer(context, () => personFile(desk, { customerId: idOf(context.req.param('file')) })),
  )
  for (const small of [false, true])
    app.get(`/documents/${small ? 'thumbnail' : 'photo'}/:id`, context =>
      answer(context, () => photoFile(desk, { id: context.req.param('id'), small })),
    )
  app.get('/documents/sheet/:productId', context =>
    answer(context, () => sheetFile(desk, { productId: context.req.param('productId') })),
  )
  // The app around it answers for faults.
  return app.onError(error => {
    throw error
  })
}

const idOf = (file: string) => file.replace(/\.\w+$/, '')
