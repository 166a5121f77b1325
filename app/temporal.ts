// Browsers and shells without Temporal of their own get it before anything else runs; the rest load nothing.
if (!('Temporal' in globalThis)) await import('temporal-polyfill/global')
