import { Button, Switch } from '@mantine/core'
import { useQuery } from '@tanstack/react-query'
import { Link } from '@tanstack/react-router'
import { useState } from 'react'
import type { SupplierView } from '../../../../main/api/views.ts'
import { decimalNow, say } from '../../../../main/domain/language/index.ts'
import { trpc } from '../../../data/trpc.ts'
import pieces from '../../../parts/pieces.module.css'
import { RowLinks } from '../../../parts/RowLinks.tsx'
import { ScreenTitle } from '../../../parts/ScreenTitle.tsx'
import type { SectionProps } from '../../../parts/Sections.tsx'
import { SupplierForm } from './SupplierForm.tsx'

/** Whom the shop buys from: their days, how long they take, what they charge for bringing it. */
export function Suppliers({ id }: SectionProps) {
  const [archived, setArchived] = useState(false)
  const suppliers = useQuery(trpc.suppliers.list.queryOptions({ archived })).data
  const supplier = suppliers?.find(each => each.id === id)
  return (
    <>
      <ScreenTitle title={say('Suppliers')} />
      <div className={pieces.side}>
        <div className={pieces.column}>
          <RowLinks
            label={say('Every supplier')}
            to="/shelf/$section/$id"
            section="suppliers"
            rows={(suppliers ?? []).map(each => ({
              id: each.id,
              title: each.name,
              about: aboutWords(each),
              archived: each.archivedAt !== null,
            }))}
          />
          {suppliers?.length === 0 && (
            <p className={pieces.empty}>
              {say(
                'No supplier yet. Their delivery days and how late they come decide how much must stand here.',
              )}
            </p>
          )}
          <div>
            <Button component={Link} to="/shelf/suppliers/new" variant="default">
              {say('Add a supplier')}
            </Button>
          </div>
          <Switch
            label={say('Archived ones too')}
            checked={archived}
            onChange={event => setArchived(event.currentTarget.checked)}
          />
        </div>
        {supplier || id === 'new' ? (
          <SupplierForm key={id} supplier={supplier} />
        ) : (
          <p className={pieces.empty}>{say('Choose a supplier to see and change it.')}</p>
        )}
      </div>
    </>
  )
}

function aboutWords({ leadMeanDays, leadSdDays, offers, openOrders }: SupplierView): string {
  const underWay = openOrders > 0 ? ` ${say('· {openOrders} under way', { openOrders })}` : ''
  return say(
    '{leadMeanDays} ± {leadSdDays} working days · {offers, plural, one {1 product} other {{offers} products}}{underWay}',
    { leadMeanDays: decimalNow(leadMeanDays), leadSdDays: decimalNow(leadSdDays), offers, underWay },
  )
}
