import { useInfiniteQuery } from '@tanstack/react-query'
import { useState } from 'react'
import { Button } from 'react-aria-components/Button'
import type { BenchId } from '../../bench/contract.ts'
import type { RecordState } from '../../bench/open-data/record-state.ts'
import { recordFacts, recordProblem } from '../../bench/open-data/record-words.ts'
import type { GroupLine, Page } from '../../bench/ports.ts'
import { getFrom } from '../api.ts'
import { Field } from '../parts/field.tsx'
import { Loading } from '../parts/loading.tsx'
import { Select } from '../parts/select.tsx'

type RecordList = Page<RecordState> & { readonly groups: readonly GroupLine[] }

/** What is asked of the records changes as a file is taken in. */
export const recordsKey = (bench: BenchId): readonly string[] => ['records', bench]

const useRecords = (bench: BenchId, asked: { readonly text: string; readonly group: string }) =>
  useInfiniteQuery({
    queryKey: [...recordsKey(bench), asked],
    queryFn: ({ pageParam, signal }) => {
      const given = Object.entries({ ...asked, after: pageParam === null ? '' : String(pageParam) })
      const query = new URLSearchParams(given.filter(([, value]) => value !== ''))
      return getFrom<RecordList>(`/bench/${bench}/records?${query}`, signal)
    },
    initialPageParam: null as number | null,
    getNextPageParam: ({ after }) => after,
    placeholderData: (before) => before,
  })

/** The repair records of others that were taken in, to look at and to find one by its words. */
export const RecordsList = ({ bench }: { readonly bench: BenchId }) => {
  const [text, setText] = useState('')
  const [group, setGroup] = useState('')
  const { data, error, hasNextPage, fetchNextPage, isFetching } = useRecords(bench, { text, group })
  const pages = data?.pages ?? []
  const [first] = pages
  if (first === undefined) return <Loading what="the records" error={error} />
  const all = first.groups.reduce((sum, { logs }) => sum + logs, 0)
  if (all === 0) return <p>None were taken in yet.</p>
  return (
    <>
      <div className="field-row">
        <Field label="Find" value={text} onChange={setText} hint="words of the problem, the make or the kind" />
        <Select label="What came of it" value={group} onChange={setGroup}>
          <option value="">All: {all}</option>
          {first.groups.map(({ group: status, logs }) => (
            <option key={status} value={status}>
              {status}: {logs}
            </option>
          ))}
        </Select>
      </div>
      <p className="quiet" role="status">
        {first.total} {first.total === 1 ? 'record' : 'records'} found
      </p>
      <ul className="repair-records" aria-label="Repair records of others" aria-busy={isFetching}>
        {pages
          .flatMap(({ items }) => items)
          .map(({ id, record }) => (
            <li key={id}>
              <p>
                <strong>{record.status}</strong>: {recordProblem(record)}
              </p>
              <p className="quiet">{recordFacts(record).join(' · ')}</p>
            </li>
          ))}
      </ul>
      {hasNextPage ? (
        <Button className="key" onPress={() => void fetchNextPage()}>
          Show more
        </Button>
      ) : null}
    </>
  )
}
