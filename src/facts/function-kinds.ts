import type { FunctionKind } from './function-kind.ts'
import { handFunctions } from './functions-by-hand.ts'
import { runFunctions } from './functions-running.ts'

/** Every kind of function, in an order that wastes no work: by hand first, then running, the whole machine last. */
export const functionKinds: readonly FunctionKind[] = [...handFunctions, ...runFunctions]
