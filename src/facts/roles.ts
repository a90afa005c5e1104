/** What people may do: everything at the bench, or the books, the money and the people too. */
export const roleNames = { bench: 'at the bench', keeper: 'keeper of the books' } as const

export type Role = keyof typeof roleNames
export const roles = Object.keys(roleNames) as [Role, ...Role[]]
