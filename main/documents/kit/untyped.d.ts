// What is used of two packages: one has no types, the other's call its default a namespace.

declare module 'linebreak' {
  /** Where a text may be broken, by UAX 14. */
  export default class LineBreaker {
    constructor(text: string)
    nextBreak(): { position: number; required: boolean } | null
  }
}

declare module 'bidi-js' {
  interface Levels {
    /** Per UTF-16 unit; odd: from right to left. */
    levels: Uint8Array
  }
  /** The Unicode bidirectional algorithm, UAX 9. */
  export default function bidi(): {
    getEmbeddingLevels(text: string, direction: 'ltr' | 'rtl'): Levels
    getReorderedIndices(text: string, levels: Levels): number[]
    getMirroredCharacter(letter: string): string | null
  }
}
