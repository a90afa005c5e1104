import type { MachineDocument } from '../../bench/contract.ts'

/** Whether anything was counted or taken out, so that something could be left over. */
export const mayWarn = ({ state, notes }: MachineDocument): boolean =>
  state.out.length > 0 ||
  notes.some(
    ({ content }) => (content.kind === 'opened' || content.kind === 'taken-out') && content.fixings !== undefined,
  )
