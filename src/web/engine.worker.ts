import { jobOf } from '../bench/job.ts'
import { machineView, reveal, virtualComplaints, virtualResult } from '../machine/index.ts'
import type { EngineAnswer, EngineJob, EngineRequest, FromEngine, ToEngine } from './engine-protocol.ts'

const asJob = (job: EngineJob) => jobOf(job.state, job.notes, job.blueprint)

const answer = (request: EngineRequest): EngineAnswer => {
  switch (request.kind) {
    case 'view':
      return { kind: 'view', view: machineView(asJob(request.job)) }
    case 'reading':
      return { kind: 'reading', result: virtualResult(asJob(request.job), request.seed, request.check) }
    case 'reveal':
      return { kind: 'reveal', reveal: reveal(asJob(request.job), request.seed, request.exit) }
    case 'complaints':
      return { kind: 'complaints', complaints: virtualComplaints(request.blueprint, request.plate, request.seed) }
  }
}

const reply = ({ id, request }: ToEngine): FromEngine => {
  try {
    return { kind: 'answered', id, answer: answer(request) }
  } catch (fault) {
    return { kind: 'failed', id, message: fault instanceof Error ? fault.message : String(fault) }
  }
}

self.addEventListener('message', (event: MessageEvent<ToEngine>) => {
  self.postMessage(reply(event.data))
})
