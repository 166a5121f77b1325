import { fileURLToPath } from 'node:url'
import react from '@vitejs/plugin-react'
import { createLogger, defineConfig } from 'vite'

/**
 * Where a sheet composes a piece of another, the loader of CSS modules parses that one without its name, and Vite warns
 * of addresses in it. There are none, and a first start is to say nothing that nobody has to act on.
 */
const customLogger = createLogger('warn')
const { warnOnce } = customLogger
customLogger.warnOnce = (text, options) => {
  if (!text.includes('did not pass the `from` option')) warnOnce(text, options)
}

export default defineConfig({
  root: fileURLToPath(new URL('.', import.meta.url)),
  base: '/',
  customLogger,
  plugins: [react()],
  build: {
    outDir: fileURLToPath(new URL('../.build/renderer', import.meta.url)),
    emptyOutDir: true,
    assetsInlineLimit: 0,
    chunkSizeWarningLimit: 2_000,
  },
})
