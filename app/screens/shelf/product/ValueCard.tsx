import type { ProductValueView } from '../../../../main/api/views.ts'
import { say } from '../../../../main/domain/language/index.ts'
import { amountText, comparedBy } from '../../../../main/domain/shelf/index.ts'
import { Card } from '../../../parts/Card.tsx'
import { Facts, Lines } from '../../../parts/Facts.tsx'
import { money } from '../../../parts/money.ts'
import pieces from '../../../parts/pieces.module.css'

/** What a product on the shelf is worth, two ways, and what 100 ml (or a fluid ounce) cost in each size. */
export function ValueCard({ value, currency }: { value: ProductValueView | null; currency: string }) {
  if (!value)
    return <p className={pieces.empty}>{say('Its worth is known once something was received at a price.')}</p>
  const { unit, per100Minor } = value
  const { words: hundred, hundreds } = comparedBy(unit)
  return (
    <Card title={say('Worth of {onHand}', { onHand: amountText(value.onHand, unit) })}>
      <Facts
        of={{
          [say('By weighted average')]: money(value.averageMinor, currency),
          [say('First in, first out')]: money(value.fifoMinor, currency),
          [say('{hundred} on average', { hundred })]:
            per100Minor !== null && money(Math.round(per100Minor * hundreds), currency),
        }}
      />
      {value.sizes.length > 0 && (
        <>
          <h3>{say('Price of {hundred} by size, cheapest first', { hundred })}</h3>
          <Lines of={value.sizes.map(size => size.words)} />
        </>
      )}
    </Card>
  )
}
