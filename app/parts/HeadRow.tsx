interface Props {
  /** The columns; one in brackets is not shown but read out. */
  columns: readonly string[]
  /** The look of figures, whose column is aligned as they are. */
  figures?: { columns: readonly string[]; className: string | undefined }
}

/** The head of a table. */
export function HeadRow({ columns, figures }: Props) {
  return (
    <thead>
      <tr>
        {columns.map(column => {
          const unseen = /^\((.*)\)$/.exec(column)?.[1]
          return (
            <th
              key={column}
              scope="col"
              aria-label={unseen}
              className={figures?.columns.includes(column) ? figures.className : undefined}
            >
              {unseen ? null : column}
            </th>
          )
        })}
      </tr>
    </thead>
  )
}
