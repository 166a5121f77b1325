import { Switch, TextInput } from '@mantine/core'
import { useQuery } from '@tanstack/react-query'
import { useNavigate } from '@tanstack/react-router'
import { useState } from 'react'
import type { CrewView } from '../../../main/api/views.ts'
import type { OpeningHours } from '../../../main/domain/calendar/index.ts'
import type { Skill } from '../../../main/domain/shop/index.ts'
import { useForm } from '../../data/form.ts'
import { useSaving } from '../../data/saving.ts'
import { useShop } from '../../data/shop.ts'
import { trpc } from '../../data/trpc.ts'
import { ArchiveButton } from '../../parts/ArchiveButton.tsx'
import { ChoiceChips } from '../../parts/ChoiceChips.tsx'
import { Form } from '../../parts/form/Form.tsx'
import { HoursEditor } from '../../parts/HoursEditor.tsx'
import type { SectionProps } from '../../parts/Sections.tsx'
import { labelOf, skillChoices } from '../../parts/shopWords.ts'
import { weekWords } from '../../parts/weekHours.ts'
import { Heading } from './Heading.tsx'
import { RowList } from './RowList.tsx'
import styles from './Settings.module.css'
import { Stretches } from './Stretches.tsx'

/** The people who work on cars. */
export function CrewSection({ id }: SectionProps) {
  const [archived, setArchived] = useState(false)
  const crew = useQuery(trpc.crew.list.queryOptions({ archived })).data
  const ordering = useSaving(trpc.crew.order.mutationOptions())
  const member = crew?.find(each => each.id === id)
  return (
    <>
      <Heading title="Crew">
        Who does what, and when they are there. A step takes as many people as it asks for, each with its
        skill, the same ones to its end.
      </Heading>
      <RowList
        section="crew"
        what="crew member"
        rows={(crew ?? []).map(each => ({
          ...each,
          about: each.skills.map(skill => labelOf(skillChoices, skill).toLowerCase()).join(', '),
        }))}
        chosenId={member || id === 'new' ? id : undefined}
        onOrder={ids => ordering.save({ ids })}
        archivedShown={archived}
        onShowArchived={setArchived}
        empty="There is nobody yet."
      >
        <CrewEditor key={id} member={member} />
      </RowList>
    </>
  )
}

interface Fields {
  name: string
  skills: Skill[]
  weekly: OpeningHours[] | null
}

const fresh: Fields = { name: '', skills: ['wash', 'polish', 'coat'], weekly: null }

function CrewEditor({ member }: { member: CrewView | undefined }) {
  const navigate = useNavigate()
  const shop = useShop()
  const saved: Fields = member ? { name: member.name, skills: member.skills, weekly: member.weekly } : fresh
  const form = useForm({
    saved,
    version: member?.version,
    saving: trpc.crew.save.mutationOptions(),
    send: (value, version) => ({ ...value, ...(member && { id: member.id, version }) }),
    done: ({ id }) => {
      if (!member) void navigate({ to: '/settings/$section/$id', params: { section: 'crew', id } })
    },
  })
  const { weekly } = form.value
  return (
    <>
      <div className={styles.card}>
        <Form form={form} label={member ? member.name : 'A new crew member'}>
          <TextInput label="Name" maw={340} autoFocus={!member} {...form.field('name')} />
          <ChoiceChips label="Skills" choices={skillChoices} {...form.field('skills')} />
          <Switch
            label="Works whenever the shop is open"
            description={weekWords(shop.weekly)}
            checked={weekly === null}
            onChange={event => form.change({ weekly: event.currentTarget.checked ? null : shop.weekly })}
          />
          {weekly && (
            <HoursEditor
              label="Their own hours"
              weekly={weekly}
              onChange={hours => form.change({ weekly: hours })}
              faults={form.faults}
            />
          )}
        </Form>
      </div>
      {member && member.archivedAt === null && (
        <Stretches
          title="Away"
          empty="Nothing ahead. Put in holidays and days off here; booked steps they leave open are named."
          addLabel="Add an absence"
          reasonExample="Holiday"
          stretches={member.absences}
          owner={{ crewId: member.id }}
          save={trpc.crew.saveAbsence.mutationOptions()}
          remove={trpc.crew.removeAbsence.mutationOptions()}
        />
      )}
      {member && (
        <ArchiveButton
          row={member}
          archive={trpc.crew.archive.mutationOptions()}
          restore={trpc.crew.restore.mutationOptions()}
          label={`Take ${member.name} off the crew`}
        />
      )}
    </>
  )
}
