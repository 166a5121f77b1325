// The shell's V8 may have been built without Temporal; it gets it before anything else runs.
if (!('Temporal' in globalThis)) await import('temporal-polyfill/global')
