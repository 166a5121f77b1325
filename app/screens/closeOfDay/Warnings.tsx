import { Link } from '@tanstack/react-router'
import type { ShelfWarning } from '../../../main/api/views.ts'
import { say } from '../../../main/domain/language/index.ts'
import { Card } from '../../parts/Card.tsx'
import pieces from '../../parts/pieces.module.css'
import styles from './CloseOfDay.module.css'

const kindWords: Record<ShelfWarning['kind'], string> = {
  expired: say('✕ past its date'),
  expiresSoon: say('date near'),
  late: say('⚑ late'),
  runsDry: say('⚑ runs dry'),
  storage: say('⚠ storage'),
  flammable: say('⚠ flammable'),
  sheet: say('data sheet'),
}

/** What else wants a look, each with where to do something about it. What runs dry stands with the shelf above. */
export function Warnings({ warnings: all }: { warnings: ShelfWarning[] }) {
  const sheets = all.filter(each => each.kind === 'sheet')
  const others = all.filter(each => each.kind !== 'sheet' && each.kind !== 'runsDry')
  const warnings = [...others, ...(sheets.length > 2 ? [joined(sheets)] : sheets)]
  if (warnings.length === 0) return null
  return (
    <Card className={styles.part} title={say('Also')}>
      <ul className={`${pieces.box} ${pieces.list} ${styles.warnings}`}>
        {warnings.map(warning => (
          <li key={`${warning.kind} ${warning.words}`}>
            <b>{kindWords[warning.kind]}</b>
            <span>
              {warning.words} <Where {...warning} />
            </span>
          </li>
        ))}
      </ul>
    </Card>
  )
}

/** Missing data sheets are one errand, not one line each. */
function joined(sheets: ShelfWarning[]): ShelfWarning {
  const productIds = sheets.flatMap(each => each.productIds)
  const words = say('{sheets} products on the shelf have no current data sheet here.', {
    sheets: sheets.length,
  })
  return { kind: 'sheet', productIds, orderId: null, words }
}

function Where({ kind, productIds, orderId }: ShelfWarning) {
  const [id, other] = productIds
  const ofAll = other !== undefined || kind === 'storage' || kind === 'flammable'
  const [params, words] =
    orderId !== null
      ? [{ section: 'orders', id: orderId }, say('Open the order')]
      : id === undefined || ofAll
        ? [{ section: 'safety' }, say('Chemical safety')]
        : [{ section: 'product', id }, say('Open the product')]
  return (
    <Link
      to={'id' in params ? '/shelf/$section/$id' : '/shelf/$section'}
      params={params}
      className={styles.where}
    >
      {words}
    </Link>
  )
}
