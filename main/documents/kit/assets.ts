import { dirname, join } from 'node:path'
import { fileURLToPath } from 'node:url'

// Three folders up lies assets/; from the bundle of the desktop app, two.
const here = dirname(fileURLToPath(import.meta.url))
const root = here.endsWith(join('documents', 'kit')) ? join(here, '..', '..', '..') : join(here, '..', '..')

/** What comes with the app and is read while it runs: fonts, catalogues of words. */
export const assetsFolder = join(root, 'assets')
