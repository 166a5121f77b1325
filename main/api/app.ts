import { randomBytes } from 'node:crypto'
import { fetchRequestHandler } from '@trpc/server/adapters/fetch'
import { Hono, type MiddlewareHandler } from 'hono'
import { bodyLimit } from 'hono/body-limit'
import { languageNow, languages, say } from '../domain/language/index.ts'
import { importMaxBytes } from '../services/cure/inputs.ts'
import type { Desk } from '../services/desk/desk.ts'
import { readCatalogue, speakingForShop, spokenFor } from '../services/desk/speaking.ts'
import { collectSaves } from '../services/desk/told.ts'
import { listCallBytes } from '../services/imports/inputs.ts'
import { sheetCallBytes } from '../services/shelf/safetyInputs.ts'
import { feedDoor } from './feeds.ts'
import { photoDoor } from './photos.ts'
import { loadRenderer } from './renderer.ts'
import { appRouter } from './router.ts'
import { sensorDoor } from './sensor.ts'

export type App = Hono<{ Variables: { nonce: string } }>

export interface AppOptions {
  desk: Desk
  /** The folder of the built renderer. */
  rendererDir: string
  /** Who may come in; the desktop window needs none, the web host brings its own. */
  guard?: MiddlewareHandler
  /** Told of faults that are ours, and what was asked, for the log. */
  onFault?: (error: unknown, asked?: string) => void
}

function securityHeaders(nonce: string): Record<string, string> {
  return {
    'content-security-policy': [
      "default-src 'none'",
      "script-src 'self'",
      `style-src 'self' 'nonce-${nonce}'`,
      "img-src 'self' data: blob:",
      "font-src 'self'",
      "connect-src 'self'",
      "frame-src 'self' blob:",
      "base-uri 'none'",
      "form-action 'self'",
      "frame-ancestors 'self'",
    ].join('; '),
    'x-content-type-options': 'nosniff',
    'referrer-policy': 'no-referrer',
    'cross-origin-opener-policy': 'same-origin',
    'cross-origin-resource-policy': 'same-origin',
    'permissions-policy': 'camera=(), microphone=(), geolocation=()',
  }
}

/** What a browser calls its desk; anything else is no name. */
const deskNamed = (name = '') => (/^[\w-]{1,64}$/.test(name) ? name : '')

/** More than any screen asks for at once; the calls of a batch share one answer, and the slowest holds up the rest. */
const mostInBatch = 40

const filePaths = new Set(['/trpc/readings.import', '/trpc/readings.preview'])

/** The one fetch handler behind both doors: the window's own scheme and the loopback web host. */
export function createApp({ desk, rendererDir, guard, onFault }: AppOptions): App {
  const files = loadRenderer(rendererDir)
  const page = new TextDecoder().decode(files.get('/index.html')?.bytes)
  const app: App = new Hono()

  app.use(async (context, next) => {
    const nonce = randomBytes(16).toString('base64')
    context.set('nonce', nonce)
    await next()
    for (const [name, value] of Object.entries(securityHeaders(nonce))) context.res.headers.set(name, value)
  })
  if (guard) app.use(guard)
  app.use((context, next) =>
    speakingForShop(desk, next, spokenFor(context.req.header('accept-language') ?? '')),
  )

  const limit = (megabytes: number) =>
    bodyLimit({
      maxSize: megabytes * 1024 * 1024,
      onError: context =>
        context.text(
          say('That is more than can be taken at once: {megabytes} MB at most.', { megabytes }),
          413,
        ),
    })
  const usual = limit(2)
  // A logger's file of weeks is larger than anything a form sends.
  const file = limit(importMaxBytes / 1024 / 1024)
  const sheet = limit(sheetCallBytes / 1024 / 1024)
  const list = limit(listCallBytes / 1024 / 1024)
  const limitOf = (path: string) =>
    path === '/trpc/imports.open'
      ? list
      : path === '/trpc/safety.uploadSheet'
        ? sheet
        : filePaths.has(path)
          ? file
          : usual
  app.use('/trpc/*', (context, next) => limitOf(context.req.path)(context, next))
  app.use('/trpc/*', async (context, next) =>
    context.req.path.split(',').length > mostInBatch
      ? context.text(
          say('That is more than can be asked at once: {mostInBatch} calls at most; ask for less at once.', {
            mostInBatch,
          }),
          413,
        )
      : next(),
  )
  app.route('/', sensorDoor(desk))
  app.route('/', feedDoor(desk))
  app.route('/', photoDoor(desk))
  app.all('/trpc/*', async context => {
    const saves: number[] = []
    const answer = await collectSaves(saves, () =>
      fetchRequestHandler({
        endpoint: '/trpc',
        req: context.req.raw,
        router: appRouter,
        createContext: () => ({ ...desk, deskId: deskNamed(context.req.header('x-lustrum-desk')) }),
        onError: ({ error, path }) => {
          if (error.code === 'INTERNAL_SERVER_ERROR') onFault?.(error, path)
        },
      }),
    )
    answer.headers.set('cache-control', 'no-store')
    // Whoever saved looks again by itself, and need not be told.
    if (saves.length > 0) answer.headers.set('x-lustrum-saves', saves.join(' '))
    return answer
  })

  let documents: Promise<Hono> | undefined
  app.get('/documents/*', async context => {
    // Not loaded until the first file is asked for: it brings every room that hands one out.
    documents ??= import('./documents.ts').then(({ documentDoor }) => documentDoor(desk))
    return (await documents).fetch(context.req.raw)
  })

  app.get('/words/:file', context => {
    const language = languages.find(each => `${each}.json` === context.req.param('file'))
    return language ? context.json(readCatalogue(language)) : context.notFound()
  })

  app.get('*', context => {
    const file = files.get(context.req.path)
    if (file && context.req.path !== '/index.html') {
      // The window's own scheme does not ask for it, and could not unpack it.
      const packed = context.req.header('accept-encoding')?.includes('gzip') ? file.gzip : undefined
      return context.body(packed ?? file.bytes, 200, {
        'content-type': file.type,
        'cache-control': file.hashed ? 'public, max-age=31536000, immutable' : 'no-cache',
        vary: 'accept-encoding',
        ...(packed && { 'content-encoding': 'gzip' }),
      })
    }
    if (context.req.path.startsWith('/assets/')) return context.notFound()
    // Every other path is a screen of the renderer's own.
    const spoken = page.replace('<html lang="en"', `<html lang="${languageNow()}"`)
    return context.html(spoken.replaceAll('__NONCE__', context.get('nonce')), 200, {
      'cache-control': 'no-store',
    })
  })

  app.onError((error, context) => {
    onFault?.(error)
    return context.text(say('Something went wrong here; nothing was saved.'), 500)
  })
  return app
}
