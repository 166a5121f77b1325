import { useLayoutEffect, useState } from 'react'
import { dateOf } from '../../../main/domain/calendar/index.ts'
import { say } from '../../../main/domain/language/index.ts'
import { useNowAt } from '../../data/now.ts'
import { useShop } from '../../data/shop.ts'
import { Answer } from './Answer.tsx'
import styles from './Book.module.css'
import { type Call, emptyCall, keepCall, keptCall } from './call.ts'
import { useBooking } from './useBooking.ts'
import { WhatPicker } from './WhatPicker.tsx'
import { WhoPicker } from './WhoPicker.tsx'
import { WishPicker } from './WishPicker.tsx'

/** The front desk with a caller on the phone: who, what and when on the left, the answer on the right. */
export function Book() {
  const nowAt = useNowAt()
  return nowAt === null ? null : <Desk nowAt={nowAt} />
}

function Desk({ nowAt }: { nowAt: number }) {
  const { zone, currency } = useShop()
  const [call, setCall] = useState<Call>(() => keptCall(localStorage, nowAt))
  // Before it is painted: what can be seen is kept, whenever the page is loaded anew.
  useLayoutEffect(() => keepCall(localStorage, call, nowAt), [call, nowAt])
  const change = (part: Partial<Call>) => setCall(current => ({ ...current, ...part }))
  const booking = useBooking(call, change, () => setCall(emptyCall))
  return (
    <div className={styles.screen}>
      <h1 className={styles.title}>{say('Book a car')}</h1>
      <div className={styles.columns}>
        <fieldset className={styles.asks} disabled={booking.own !== null} aria-label={say('Who and what')}>
          <WhoPicker call={call} change={change} fault={booking.fault} />
          <WhatPicker call={call} currency={currency} change={change} />
          <WishPicker call={call} today={dateOf(nowAt, zone)} change={change} />
        </fieldset>
        <Answer call={call} change={change} booking={booking} />
      </div>
    </div>
  )
}
