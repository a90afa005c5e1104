/** Electrical networks: solve them, and what an ohmmeter reads between two nodes. */
export { networkSchema, type Network, type NetworkElement } from './schema.ts'
export { solveAc, solveDc, type NetworkSolution } from './solve.ts'
export { dcOhm } from './branch.ts'
export { compileOhms, joinedWhenSolved, nodeIndex, ohmsBetween, type OhmsNetwork } from './ohms.ts'
export { makeOhmsTable, type OhmsTable } from './ohms-table.ts'
export { handheldOhmmeter, maximumOhm, readOhmmeter, type Ohmmeter, type OhmmeterReading } from './ohmmeter.ts'
export { networkProblem } from './problems.ts'
export { networkRequestSchema, runNetwork, type NetworkAnswer, type NetworkRequest } from './request.ts'
