import type { BoardView } from '../../../../main/api/views.ts'
import { capabilityChoices, labelsOf } from '../../../parts/shopWords.ts'
import styles from './BayLabel.module.css'

/** What a lane is called and can do, within its column however long the name; HTML in the drawing, because SVG words do not wrap. */
export function BayLabel({ bay, ...box }: { bay: BoardView['bays'][number] } & Box) {
  return (
    <foreignObject {...box}>
      <div className={styles.label} title={bay.name}>
        <b>{bay.name}</b>
        <span>{labelsOf(capabilityChoices, bay.capabilities)}</span>
      </div>
    </foreignObject>
  )
}

interface Box {
  x: number
  y: number
  width: number
  height: number
}
