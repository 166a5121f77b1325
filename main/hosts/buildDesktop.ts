import { copyFileSync, cpSync, mkdirSync } from 'node:fs'
import { createRequire } from 'node:module'
import { dirname, join } from 'node:path'

/** What stays outside the bundle: the shell itself, and the native modules with their machine code. */
const outside = ['electron', 'better-sqlite3', 'sharp']

/**
 * Bundles the window's process with everything in it but the native module, so that the package carries no tree of
 * modules; beside it lie the migrations and the migration engine's WebAssembly.
 */
export async function bundleDesktop(root: string, outDir: string): Promise<void> {
  const { build } = await import('vite')
  await build({
    configFile: false,
    root,
    logLevel: 'warn',
    ssr: { noExternal: true, external: outside },
    build: {
      ssr: true,
      outDir,
      emptyOutDir: true,
      target: 'es2024',
      sourcemap: false,
      rolldownOptions: {
        external: outside,
        input: {
          desktop: join(root, 'main', 'hosts', 'desktop', 'main.ts'),
          // A thread's program is a file of its own, found beside the bundle.
          inspectThread: join(root, 'main', 'store', 'backup', 'inspectThread.ts'),
          xlsxThread: join(root, 'main', 'services', 'imports', 'xlsxThread.ts'),
          layThread: join(root, 'main', 'services', 'dayPlan', 'layThread.ts'),
        },
        output: { format: 'es', entryFileNames: '[name].mjs', chunkFileNames: '[name]-[hash].mjs' },
      },
    },
  })
  cpSync(join(root, 'prisma', 'migrations'), join(outDir, 'migrations'), { recursive: true })
  const engine = createRequire(import.meta.url).resolve('@prisma/schema-engine-wasm/schema_engine_bg')
  copyFileSync(engine.replace(/\.js$/, '.wasm'), join(outDir, 'schema_engine_bg.wasm'))
  // The colours of an archival PDF, which the package looks for beside itself: by now, beside the bundle.
  const colours = join('data', 'sRGB_IEC61966_2_1.icc')
  mkdirSync(join(outDir, 'data'), { recursive: true })
  copyFileSync(
    join(dirname(createRequire(import.meta.url).resolve('pdfkit')), colours),
    join(outDir, colours),
  )
}
