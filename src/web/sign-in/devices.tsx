import { useQuery, useQueryClient } from '@tanstack/react-query'
import { useState } from 'react'
import { Button } from 'react-aria-components/Button'
import type { Problem } from '../../base/problem.ts'
import { roleNames } from '../../facts/roles.ts'
import { say } from '../parts/live.tsx'
import { Loading } from '../parts/loading.tsx'
import { Problems } from '../parts/problems.tsx'
import { momentText } from '../words.ts'
import { getDevices, getPeople, shutOut, type SignedInDevice } from './api.ts'

const devicesKey: readonly string[] = ['devices']

/** The devices that are signed in; each can be shut out. */
export const Devices = () => {
  const { data, error } = useQuery({ queryKey: devicesKey, queryFn: ({ signal }) => getDevices(signal) })
  return (
    <section aria-label="Devices">
      <h2 className="settings-head">Devices</h2>
      {data === undefined ? <Loading what="the devices" error={error} /> : <DeviceList devices={data} />}
    </section>
  )
}

const DeviceList = ({ devices }: { readonly devices: readonly SignedInDevice[] }) => {
  const client = useQueryClient()
  const [problems, setProblems] = useState<readonly Problem[]>([])
  const close = async (device: SignedInDevice): Promise<void> => {
    const answer = await shutOut(device.id)
    setProblems(answer.kind === 'refused' ? answer.problems : [])
    if (answer.kind === 'refused') return
    client.setQueryData(devicesKey, answer.value.devices)
    say(`Shut out: ${device.name}.`)
  }
  return (
    <>
      <ul className="devices">
        {devices.map((device) => (
          <li key={device.id}>
            <span>
              {[device.person?.name, device.name].filter(Boolean).join(', ')}
              <span className="quiet"> {device.isThis ? 'this one' : `seen ${momentText(device.seenAt)}`}</span>
            </span>
            {device.isThis ? null : (
              <Button
                className="plain"
                aria-label={`Shut out: ${device.person?.name ?? ''} ${device.name}, seen ${momentText(device.seenAt)}`}
                onPress={() => void close(device)}
              >
                shut out
              </Button>
            )}
          </li>
        ))}
      </ul>
      <Problems problems={problems} />
    </>
  )
}

/** Who has a name at the bench; they are added and changed on its own machine. */
export const People = () => {
  const { data, error } = useQuery({ queryKey: ['people'], queryFn: ({ signal }) => getPeople(signal) })
  const there = data?.filter(({ goneAt }) => goneAt === null)
  return (
    <section aria-label="People">
      <h2 className="settings-head">People</h2>
      {there === undefined ? <Loading what="the people" error={error} /> : null}
      <ul className="devices">
        {there?.map(({ id, name, role }) => (
          <li key={id}>
            {name}, {roleNames[role]}
          </li>
        ))}
      </ul>
      <p className="hint">
        {there?.length === 0 ? 'Nobody has a name here; the bench is one for all. ' : ''}On the machine of the bench,{' '}
        <code>thrum people add NAME --role bench</code> adds somebody, who then signs in by name.
      </p>
    </section>
  )
}
