import { registerHooks } from 'node:module'

/** Loaded before the bundle: `electron` is the stand-in. */
registerHooks({
  resolve: (specifier, context, next) =>
    specifier === 'electron'
      ? { url: new URL('./electronModule.ts', import.meta.url).href, shortCircuit: true }
      : next(specifier, context),
})
