import { Button, Group } from '@mantine/core'
import type { CarView } from '../../../main/api/views.ts'
import { say } from '../../../main/domain/language/index.ts'
import { useBookFor } from '../book/useBookFor.ts'
import { nextOfCar } from './nextOfCar.ts'

export type CarForm = 'look' | 'layer'

/** What may be done with a car; the next of it is filled. */
export function CarActs({ car, onForm }: { car: CarView; onForm(form: CarForm): void }) {
  const bookFor = useBookFor()
  const next = nextOfCar(car)
  const variant = (act: typeof next.act) => (next.act === act ? 'filled' : 'default')
  return (
    <Group gap="sm">
      {next.act === 'book' && (
        <Button
          onClick={() =>
            void bookFor(
              car.customerId,
              car.vehicleId,
              next.visit.dueOn > car.today ? next.visit.dueOn : null,
            )
          }
        >
          {say('Book: {title}', { title: next.visit.title })}
        </Button>
      )}
      {car.layers.length > 0 && (
        <Button variant={variant('look')} onClick={() => onForm('look')}>
          {say('Record an inspection')}
        </Button>
      )}
      <Button variant={variant('layer')} onClick={() => onForm('layer')}>
        {say('Enter a coating or topper')}
      </Button>
    </Group>
  )
}
