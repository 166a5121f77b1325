import { Switch, TextInput } from '@mantine/core'
import { useQuery } from '@tanstack/react-query'
import { useState } from 'react'
import type { CrewView } from '../../../main/api/views.ts'
import type { OpeningHours } from '../../../main/domain/calendar/index.ts'
import { say } from '../../../main/domain/language/index.ts'
import type { Skill } from '../../../main/domain/shop/index.ts'
import { useShop } from '../../data/shop.ts'
import { trpc } from '../../data/trpc.ts'
import { ChoiceChips } from '../../parts/ChoiceChips.tsx'
import { HoursEditor } from '../../parts/HoursEditor.tsx'
import { DecimalInput } from '../../parts/inputs.tsx'
import type { SectionProps } from '../../parts/Sections.tsx'
import { labelsOf, skillChoices } from '../../parts/shopWords.ts'
import { weekWords } from '../../parts/weekHours.ts'
import { RowEditor, useRowForm } from './RowEditor.tsx'
import { RowSection } from './RowSection.tsx'
import { Stretches } from './Stretches.tsx'

/** The people who work on cars. */
export function CrewSection({ id }: SectionProps) {
  const archived = useState(false)
  return (
    <RowSection
      id={id}
      section="crew"
      title={say('Crew')}
      what={say('crew member')}
      rows={useQuery(trpc.crew.list.queryOptions({ archived: archived[0] })).data}
      about={member => labelsOf(skillChoices, member.skills)}
      order={trpc.crew.order.mutationOptions()}
      archived={archived}
      empty={say('There is nobody yet.')}
      editor={member => <CrewEditor member={member} />}
    >
      {say(
        'Who does what, and when they are there. A step takes as many people as it asks for, each with its skill, the same ones to its end.',
      )}
    </RowSection>
  )
}

interface Fields {
  name: string
  skills: Skill[]
  noticeDays: number
  weekly: OpeningHours[] | null
}

const fresh: Fields = { name: '', skills: ['wash', 'polish', 'coat'], noticeDays: 0, weekly: null }

function CrewEditor({ member }: { member: CrewView | undefined }) {
  const shop = useShop()
  const { name, skills, noticeDays, weekly } = member ?? fresh
  const form = useRowForm<Fields>(
    'crew',
    member,
    { name, skills, noticeDays, weekly },
    trpc.crew.save.mutationOptions(),
  )
  const hours = form.value.weekly
  const absences = member?.archivedAt === null && (
    <Stretches
      title={say('Away')}
      empty={say('Nothing ahead. Put in holidays and days off here; booked steps they leave open are named.')}
      addLabel={say('Add an absence')}
      reasonExample={say('Holiday')}
      stretches={member.absences}
      owner={{ crewId: member.id }}
      save={trpc.crew.saveAbsence.mutationOptions()}
      remove={trpc.crew.removeAbsence.mutationOptions()}
    />
  )
  return (
    <RowEditor
      form={form}
      row={member}
      what={say('crew member')}
      api={trpc.crew}
      archive={say('Remove {name} from the crew', { name: member?.name ?? '' })}
      beside={absences}
    >
      <TextInput label={say('Name')} maw={340} autoFocus={!member} {...form.field('name')} />
      <ChoiceChips label={say('Skills')} choices={skillChoices} {...form.field('skills')} />
      <DecimalInput
        label={say('Days of notice')}
        description={say(
          'Of somebody from outside: offers count on them only so many days ahead, or on a day they come anyway. 0: one of your own.',
        )}
        maw={340}
        whole
        least={0}
        most={365}
        {...form.field('noticeDays')}
      />
      <Switch
        label={say('Works whenever the shop is open')}
        description={weekWords(shop.weekly)}
        checked={hours === null}
        onChange={event => form.change({ weekly: event.currentTarget.checked ? null : shop.weekly })}
      />
      {hours && (
        <HoursEditor
          label={say('Their own hours')}
          weekly={hours}
          onChange={weekly => form.change({ weekly })}
          faults={form.faults}
        />
      )}
    </RowEditor>
  )
}
