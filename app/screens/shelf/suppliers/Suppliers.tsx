import { Button, Switch } from '@mantine/core'
import { useQuery } from '@tanstack/react-query'
import { Link } from '@tanstack/react-router'
import { useState } from 'react'
import { trpc } from '../../../data/trpc.ts'
import type { SectionProps } from '../../../parts/Sections.tsx'
import styles from '../Shelf.module.css'
import { SupplierForm } from './SupplierForm.tsx'

/** Whom the shop buys from: their days, how long they take, what they charge for bringing it. */
export function Suppliers({ id }: SectionProps) {
  const [archived, setArchived] = useState(false)
  const suppliers = useQuery(trpc.suppliers.list.queryOptions({ archived })).data
  const supplier = suppliers?.find(each => each.id === id)
  return (
    <>
      <div className={styles.heading}>
        <h1>Suppliers</h1>
      </div>
      <div className={styles.side}>
        <div>
          <ul className={styles.rows} aria-label="Every supplier">
            {(suppliers ?? []).map(each => (
              <li key={each.id} data-archived={each.archivedAt !== null}>
                <Link to="/shelf/$section/$id" params={{ section: 'suppliers', id: each.id }}>
                  <b>{each.name}</b>
                  <small>
                    {each.leadMeanDays} ± {each.leadSdDays} working days · {each.offers}{' '}
                    {each.offers === 1 ? 'product' : 'products'}
                    {each.openOrders > 0 && ` · ${each.openOrders} under way`}
                  </small>
                </Link>
              </li>
            ))}
          </ul>
          {suppliers?.length === 0 && (
            <p className={styles.empty}>
              No supplier yet. Their delivery days and how late they come decide how much must stand here.
            </p>
          )}
          <Button component={Link} to="/shelf/suppliers/new" variant="default" mt="sm">
            Add a supplier
          </Button>
          <Switch
            mt="sm"
            label="Archived ones too"
            checked={archived}
            onChange={event => setArchived(event.currentTarget.checked)}
          />
        </div>
        {supplier || id === 'new' ? (
          <SupplierForm key={id} supplier={supplier} />
        ) : (
          <p className={styles.empty}>Choose a supplier to see and change it.</p>
        )}
      </div>
    </>
  )
}
