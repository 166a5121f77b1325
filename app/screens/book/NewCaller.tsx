import { Anchor, Select, TextInput } from '@mantine/core'
import { say } from '../../../main/domain/language/index.ts'
import type { Fields } from '../../data/fields.ts'
import { alikeWords } from '../../parts/AlikeList.tsx'
import { Say } from '../../parts/Say.tsx'
import { finishChoices } from '../../parts/shopWords.ts'
import { useAlike } from '../../parts/useAlike.ts'
import styles from './Book.module.css'
import { CarsOf } from './CarsOf.tsx'
import { type Call, nobody } from './call.ts'

interface Props {
  fields: Fields<Call>
  change(part: Partial<Call>): void
}

/** A caller nobody has met, with their car; whoever looks like them on file is shown before a second one is made. */
export function NewCaller({ fields, change }: Props) {
  return (
    <>
      <Anchor component="button" type="button" size="sm" ta="left" onClick={() => change(nobody)}>
        {say('Find somebody on file')}
      </Anchor>
      <div className={styles.pair}>
        <TextInput label={say('New customer’s name')} size="xs" autoFocus {...fields.field('customerName')} />
        <TextInput label={say('Phone')} type="tel" size="xs" {...fields.field('phone')} />
      </div>
      <TextInput label={say('E-mail')} type="email" size="xs" {...fields.field('email')} />
      <OnFile call={fields.value} change={change} />
      <VehicleFields fields={fields} />
    </>
  )
}

/** Who is on file under the same name, phone, address or plate. */
function OnFile({ call, change }: { call: Call; change: Props['change'] }) {
  const { customerName: name, phone, email, plate } = call
  const alike = useAlike({ name, phone, email, plate }).filter(each => each.archivedAt === null)
  if (alike.length === 0) return null
  return (
    <ul className={styles.found} aria-label={say('On file already')}>
      {alike.slice(0, 2).map(customer => (
        <li key={customer.id}>
          <span>
            <Say
              text="On file already: <b>{name}</b> {customer}"
              values={{ name: customer.name, customer: alikeWords(customer) }}
            />
          </span>
          <CarsOf customer={customer} change={change} />
        </li>
      ))}
    </ul>
  )
}

export function VehicleFields({ fields }: { fields: Fields<Call> }) {
  return (
    <>
      <div className={styles.triple}>
        <TextInput label={say('Plate')} placeholder={say('later')} size="xs" {...fields.field('plate')} />
        <TextInput label={say('Make')} size="xs" {...fields.field('make')} />
        <TextInput label={say('Model')} size="xs" {...fields.field('model')} />
      </div>
      <div className={styles.pair}>
        <TextInput label={say('Colour')} size="xs" {...fields.field('colour')} />
        <Select label={say('Finish')} size="xs" data={finishChoices} {...fields.choice('finish')} />
      </div>
    </>
  )
}
