import { useQuery, useQueryClient } from '@tanstack/react-query'
import { useState } from 'react'
import { Button } from 'react-aria-components/Button'
import type { Problem } from '../../base/problem.ts'
import { say } from '../parts/live.tsx'
import { Loading } from '../parts/loading.tsx'
import { Problems } from '../parts/problems.tsx'
import { momentText } from '../words.ts'
import { getDevices, shutOut, type SignedInDevice } from './api.ts'

export const devicesKey: readonly string[] = ['devices']

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
