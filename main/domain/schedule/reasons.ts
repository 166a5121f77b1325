/** What a plan breaks; each rule of the case format has its own code. */
export type ViolationCode =
  | 'stepCount'
  | 'offGrid'
  | 'beforeRelease'
  | 'beyondHorizon'
  | 'wrongEnd'
  | 'closedHours'
  | 'doorsClosed'
  | 'waitTooShort'
  | 'waitTooLong'
  | 'unknownBay'
  | 'unfitBay'
  | 'leftBay'
  | 'bayTaken'
  | 'bayClosed'
  | 'outsidePin'
  | 'movedInHold'
  | 'crewSize'
  | 'unknownPerson'
  | 'unskilled'
  | 'personAway'
  | 'personTwice'
  | 'earlyHandover'

/** What keeps an offer from being better, or from being there at all. */
export type BindingCode =
  | 'bayTaken'
  | 'bayClosed'
  | 'crewBusy'
  | 'cure'
  | 'holdsDoor'
  | 'shopClosed'
  | 'recoatWait'
  | 'recoatLimit'
  | 'pinned'
  | 'noBay'
  | 'noSkill'
  | 'tooLong'
  | 'onlyBay'
  | 'horizon'
  | 'workItself'

/**
 * One thing that stands in the way, as data; `reasonText` turns it into words. `step` counts from 0; `from` and `to`
 * are the minutes it is about, `minutes` a duration the rule asks for, `limit` what there is instead.
 */
export interface Reason<Code extends string = ViolationCode | BindingCode> {
  readonly code: Code
  readonly step?: number
  readonly bay?: string
  readonly person?: string
  readonly skill?: string
  readonly capability?: string
  readonly from?: number
  readonly to?: number
  readonly minutes?: number
  readonly limit?: number
  /** The job that holds the bay, where it is known. */
  readonly other?: string
}

export type Violation = Reason<ViolationCode>
export type Binding = Reason<BindingCode>
