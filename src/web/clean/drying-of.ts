import type { Drying, MachineState } from '../../bench/contract.ts'

/** What dries; nothing where the machine was kept on this device or summed up by a program that knew no drying yet. */
export const dryingOf = (state: Partial<Pick<MachineState, 'drying'>>): readonly Drying[] => state.drying ?? []
