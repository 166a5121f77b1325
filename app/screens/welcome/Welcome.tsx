import { Checkbox, TextInput } from '@mantine/core'
import { useNavigate } from '@tanstack/react-router'
import { useState } from 'react'
import icon from '../../../assets/icon.svg'
import type { ShopView } from '../../../main/api/views.ts'
import { say } from '../../../main/domain/language/index.ts'
import type { Capability, Skill } from '../../../main/domain/shop/index.ts'
import { useForm } from '../../data/form.ts'
import { writeAsIn } from '../../data/shop.ts'
import { queryClient, trpc } from '../../data/trpc.ts'
import { Card } from '../../parts/Card.tsx'
import { Form } from '../../parts/form/Form.tsx'
import { HoursEditor } from '../../parts/HoursEditor.tsx'
import { PlaceFields } from '../../parts/PlaceFields.tsx'
import pieces from '../../parts/pieces.module.css'
import { SchemeMenu } from '../../parts/SchemeMenu.tsx'
import { capabilityChoices, skillChoices } from '../../parts/shopWords.ts'
import { usualWeek } from '../../parts/weekHours.ts'
import { DemoOffer } from './DemoOffer.tsx'
import { type Named, NamedRows } from './NamedRows.tsx'
import { presetsFor } from './presets.ts'
import { RestoreOffer } from './RestoreOffer.tsx'
import styles from './Welcome.module.css'

function firstDraft() {
  return {
    name: '',
    zone: Temporal.Now.timeZoneId(),
    ...presetsFor(navigator.language),
    weekly: usualWeek,
    bays: [
      { name: say('Bay 1'), can: ['wet'] },
      { name: say('Bay 2'), can: ['polish', 'clean', 'cure'] },
    ] as Named<Capability>[],
    crew: [{ name: '', can: ['wash', 'polish', 'coat'] }] as Named<Skill>[],
    starters: true,
  }
}

/** The first run: a shop with its hours, bays and crew in under two minutes, or the invented one to look around in. */
export function Welcome() {
  const navigate = useNavigate()
  const enter = (shop: ShopView) => {
    queryClient.setQueryData(trpc.shop.get.queryKey(), shop)
    void navigate({ to: '/' })
  }
  const form = useForm({
    saved: useState(firstDraft)[0],
    saving: trpc.shop.setUp.mutationOptions(),
    send: ({ bays, crew, ...shop }) => ({
      ...shop,
      bays: bays.map(({ name, can }) => ({ name, capabilities: can })),
      crew: crew.map(({ name, can }) => ({ name, skills: can })),
    }),
    done: enter,
  })
  const { value: draft, change, faults } = form
  // While it is drawn, not after: the hours below are written anew with each choice.
  writeAsIn(draft)
  return (
    <main className={styles.page}>
      <header className={styles.head}>
        <img src={icon} width={40} height={40} alt="" />
        <div>
          <h1>{say('Welcome to Lustrum')}</h1>
          <p>
            {say(
              'It promises cars exactly: when each can come in, which bay it blocks while it cures, and when it may honestly go home. For that it needs to know your shop. Everything here can be changed later.',
            )}
          </p>
        </div>
        <SchemeMenu />
      </header>
      <DemoOffer onOpened={enter} />
      <RestoreOffer />
      <Form form={form} label={say('Set up the shop')} save={say('Open the shop')}>
        <div className={styles.columns}>
          <Card title={say('The shop')}>
            <div className={pieces.fields}>
              <TextInput
                label={say('Name of the shop')}
                autoFocus
                className={pieces.whole}
                {...form.field('name')}
              />
              <PlaceFields form={form} />
            </div>
          </Card>
          <section className={pieces.card} aria-label={say('Opening hours')}>
            <HoursEditor
              label={say('Opening hours')}
              weekly={draft.weekly}
              onChange={weekly => change({ weekly })}
              faults={faults}
            />
          </section>
          <Card title={say('Bays')}>
            <p className={pieces.soft}>
              {say(
                'A place a car can stand, and what can be done there: wet work, polishing, laying a coat in clean air, curing.',
              )}
            </p>
            <NamedRows
              what={say('bay')}
              rows={draft.bays}
              onChange={bays => change({ bays })}
              fresh={count => ({
                name: say('Bay {count}', { count: count + 1 }),
                can: ['polish', 'clean', 'cure'],
              })}
              choices={capabilityChoices}
              choicesLabel={say('is good for')}
              faults={faults}
              fields={{ list: 'bays', choices: 'capabilities' }}
              addLabel={say('Add a bay')}
            />
          </Card>
          <Card title={say('Crew')}>
            <p className={pieces.soft}>
              {say(
                'Who works on cars, and at what. Begin with yourself; hours of their own and absences are set later.',
              )}
            </p>
            <NamedRows
              what={say('crew member')}
              rows={draft.crew}
              onChange={crew => change({ crew })}
              fresh={() => ({ name: '', can: ['wash', 'polish', 'coat'] })}
              choices={skillChoices}
              choicesLabel={say('can')}
              faults={faults}
              fields={{ list: 'crew', choices: 'skills' }}
              addLabel={say('Add somebody')}
            />
          </Card>
        </div>
        <div className={pieces.card}>
          <Checkbox
            label={say('Begin with five usual treatments and the products they use')}
            description={say(
              'Times are rules of thumb and prices are left open; cure times are common practice until you enter the data sheet’s.',
            )}
            {...form.tick('starters')}
          />
        </div>
      </Form>
    </main>
  )
}
