import { Link } from '@tanstack/react-router'
import { decimalNow, say } from '../../../main/domain/language/index.ts'
import { amountText } from '../../../main/domain/shelf/index.ts'
import { HeadRow } from '../../parts/HeadRow.tsx'
import pieces from '../../parts/pieces.module.css'
import { RowButton } from '../../parts/RowButton.tsx'
import { HazardMark } from '../../parts/shelf/HazardMark.tsx'
import table from '../../parts/table.module.css'
import styles from './CloseOfDay.module.css'
import { keyOf, type Used } from './used.ts'

interface Props {
  rows: Used[]
  /** Opens the steps that used a product. */
  open(keys: string[]): void
}

/** By product: used today, left, and what that must last for. */
export function UsedTable({ rows, open }: Props) {
  return (
    <table className={table.table}>
      <HeadRow
        columns={[
          say('Product'),
          say('Used today'),
          say('Left, and what it must last for'),
          say('(Correct)'),
        ]}
      />
      <tbody>
        {rows.map(row => {
          const { productId, name, unit, amounts, left, mustLast, short } = row
          const most = Math.max(left, mustLast, 1)
          return (
            <tr key={productId}>
              <td>
                <Link
                  to="/shelf/$section/$id"
                  params={{ section: 'product', id: productId }}
                  className={styles.name}
                >
                  {name}
                </Link>
                <HazardMark productId={productId} />
              </td>
              <td>{usedWords(amounts, unit)}</td>
              <td>
                <span className={styles.lasts} aria-hidden="true">
                  <span style={{ width: `${(left / most) * 100}%` }} />
                  <i data-short={mustLast > left} style={{ left: `${(mustLast / most) * 100}%` }} />
                </span>
                <small className={short === null ? pieces.soft : pieces.late}>
                  {short !== null && '⚑ '}
                  {short ??
                    say('{left}, {mustLast} booked in two weeks', {
                      left: roundly(left, unit),
                      mustLast: roundly(mustLast, unit),
                    })}
                </small>
              </td>
              <td>
                <RowButton
                  does={say('Correct')}
                  of={say('what was used of {name}', { name })}
                  onClick={() => open(row.steps.map(keyOf))}
                />
              </td>
            </tr>
          )
        })}
      </tbody>
    </table>
  )
}

/** To what somebody can act on: tens from a hundred on. */
function roundly(amount: number, unit: Used['unit']): string {
  return amountText(amount < 100 ? Math.round(amount) : Math.round(amount / 10) * 10, unit)
}

/** "80 + 68 + 90 ml"; many are added up. */
function usedWords(amounts: number[], unit: Used['unit']): string {
  const total = amounts.reduce((sum, amount) => sum + amount, 0)
  if (amounts.length === 1 || amounts.length > 4) return amountText(total, unit)
  const last = amountText(amounts.at(-1) ?? 0, unit)
  return [...amounts.slice(0, -1).map(amount => decimalNow(Math.round(amount * 10) / 10)), last].join(' + ')
}
