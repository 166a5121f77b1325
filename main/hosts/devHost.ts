/*
 * What `npm run dev` starts, and starts again: the web host, whose page and modules come from Vite's server, which runs
 * on meanwhile. The page lies in the folder LUSTRUM_DEV_PAGE; LUSTRUM_DEV_VITE is the server's address.
 */
import { buildClient } from './build.ts'
import { readOptions } from './options.ts'
import { withDevScreens } from './web/devScreens.ts'

const { LUSTRUM_DEV_PAGE: rendererDir, LUSTRUM_DEV_VITE: vite } = process.env
if (!rendererDir || !vite) throw new Error('Started by npm run dev only.')
const options = readOptions(process.argv.slice(2))
await buildClient()
// Not before the client is there.
const { startWeb } = await import('./startWeb.ts')
await startWeb(options, { rendererDir, around: handler => withDevScreens(handler, new URL(vite)) })
