import { Modal, type ModalProps } from '@mantine/core'
import { useRef } from 'react'
import { mayLeave } from '../../data/unsaved.ts'
import styles from './Dialog.module.css'

type Props = Pick<ModalProps, 'title' | 'size' | 'children' | 'onClose'>

/** A dialog that holds a form: closed by a key or a click beside it, it asks before typed text is lost. */
export function Dialog({ onClose, children, ...rest }: Props) {
  const inside = useRef<HTMLDivElement>(null)
  const close = () => void mayLeave(inside.current ?? document.body).then(may => may && onClose())
  return (
    <Modal opened onClose={close} {...rest}>
      <div ref={inside} className={styles.inside}>
        {children}
      </div>
    </Modal>
  )
}
