import { type PictogramCode, pictogram } from '../../../main/domain/hazard/index.ts'
import { say } from '../../../main/domain/language/index.ts'
import styles from './shelf.module.css'

interface Props {
  codes: readonly PictogramCode[]
  /** Rem. */
  size?: number
}

/** Hazard pictograms side by side, each named by its symbol. */
export function Pictograms({ codes, size = 2.2 }: Props) {
  if (codes.length === 0) return null
  return (
    <span className={styles.pictograms}>
      {codes.map(code => {
        const { symbol, layers } = pictogram(code)
        return (
          <svg
            key={code}
            viewBox="0 0 100 100"
            style={{ width: `${size}rem`, height: `${size}rem` }}
            role="img"
            aria-label={say('Hazard pictogram: {symbol}', { symbol })}
          >
            {layers.map(layer => (
              <path key={`${layer.fill}${layer.d}`} fill={layer.fill} d={layer.d} />
            ))}
          </svg>
        )
      })}
    </span>
  )
}
