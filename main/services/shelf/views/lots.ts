export type ShelfUnit = 'ml' | 'g' | 'piece'

/** `vital`: no job without it; `usual`; `handy`: something else does for a day. Each has the owner's service level. */
export type ServiceClass = 'vital' | 'usual' | 'handy'

/** One container with something in it, in the order in which bottles are to be used: the first one next. */
export interface LotView {
  id: string
  /** What the shop calls it by: written on it, spoken, scanned. */
  number: number
  productId: string
  sizeId: string | null
  sizeLabel: string | null
  batch: string | null
  onHand: number
  receivedOn: string
  /** Printed on it. */
  expiresOn: string | null
  openedOn: string | null
  /** The last day it may be used: the earlier of the printed one and the opened bottle's own. Null: it keeps. */
  lastOn: string | null
  state: 'sealed' | 'open' | 'expired'
  /** The one to take next. */
  next: boolean
  /** `no. 412, opened 3 April, use by 3 July, 180 ml left`. */
  words: string
}

export type MoveKind = 'receipt' | 'use' | 'waste' | 'count' | 'return' | 'correction'

/** A line of the ledger. */
export interface MoveView {
  seq: number
  kind: MoveKind
  /** Signed: what it adds to the bottle. */
  amount: number
  at: number
  by: string
  why: string | null
  lotId: string
  lotNumber: number
  /** The job a use served. */
  job: { id: string; number: number; plate: string; stepName: string } | null
  costMinor: number | null
  correctsSeq: number | null
  /** `used 38 ml for the first layer of KFR 204`. */
  words: string
}

/** What a change of stock answers with: the bottles as they now stand, and what happened in words. */
export interface StockChangeView {
  productId: string
  onHand: number
  lots: LotView[]
  words: string[]
}

/** What a scan or typed code stands for. */
export type ScanView =
  | {
      kind: 'known'
      code: string
      productId: string
      productName: string
      unit: ShelfUnit
      /** Null where the code was learned without a size. */
      sizeId: string | null
      sizeLabel: string | null
      /** Where the code names them (GS1 DataMatrix): what to enter when goods come in. */
      expiresOn: string | null
      batch: string | null
      lots: LotView[]
    }
  /** A label of this shop's own, as printed for a bottle. */
  | { kind: 'bottle'; code: string; productId: string; productName: string; unit: ShelfUnit; lot: LotView }
  /** Well formed and not known yet: `shelf.learnCode` remembers it. */
  | { kind: 'unknown'; code: string; expiresOn: string | null; batch: string | null; words: string }
  /** A digit was misread: scan again, or type it again. */
  | { kind: 'badCheckDigit'; code: string; words: string }
