import { Link } from '@tanstack/react-router'
import type { ReactNode } from 'react'
import type { AlikeCustomer } from '../../main/api/views.ts'
import { say } from '../../main/domain/language/index.ts'
import { listWords } from '../../main/domain/words.ts'
import pieces from './pieces.module.css'

const likenessWords: Readonly<Record<AlikeCustomer['why'][number], string>> = {
  plate: say('plate||likeness'),
  VIN: say('VIN'),
  phone: say('phone||likeness'),
  'e-mail': say('e-mail||likeness'),
  name: say('name||likeness'),
  'much the same name': say('much the same name'),
}

interface Props {
  alike: readonly AlikeCustomer[]
  /** What can be done with one of them. */
  act?: (customer: AlikeCustomer) => ReactNode
}

/** Who is likely on file already, with what speaks for it. */
export function AlikeList({ alike, act }: Props) {
  if (alike.length === 0) return null
  return (
    <div role="status" aria-label={say('Likely on file already')}>
      <ul className={pieces.list}>
        {alike.map(customer => (
          <li key={customer.id}>
            <span className={pieces.grow}>
              <Link to="/customers/$id" params={{ id: customer.id }}>
                {customer.name}
              </Link>
              <small>{alikeWords(customer)}</small>
            </span>
            {act?.(customer)}
          </li>
        ))}
      </ul>
    </div>
  )
}

/** "same phone and name; KFR 204, archived". */
export function alikeWords({ why, vehicles, archivedAt }: AlikeCustomer): string {
  const [near, same] = [
    why.filter(each => each === 'much the same name'),
    why.filter(each => each !== 'much the same name'),
  ]
  const said = [
    ...(same.length > 0
      ? [say('same {same}', { same: listWords(same.map(each => likenessWords[each])) })]
      : []),
    ...near.map(each => likenessWords[each]),
  ].join(', ')
  const plates = vehicles
    .slice(0, 4)
    .map(car => car.plate)
    .filter(Boolean)
  return [said, [...plates, ...(archivedAt !== null ? [say('archived')] : [])].join(', ')]
    .filter(Boolean)
    .join('; ')
}
