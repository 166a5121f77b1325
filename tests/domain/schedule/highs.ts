import loader, { type Highs } from 'highs'

export type { Highs }

/** HiGHS as WebAssembly. The package's types describe its CommonJS face, where the loader sits one level deeper. */
export function loadHighs(): Promise<Highs> {
  return (loader as unknown as typeof loader.default)()
}
